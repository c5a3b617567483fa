// Closed forms of illuminating engineering. Extended sources are summed from small Lambertian emitters.
// Where a row says "by formula", the number was computed from the formula named with it.
#include "lamps.hpp"

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

/// Peak cos² θ: the beam model at 90 degrees, 2 pi Imax / (n + 1) lumens.
LightDistribution cosine_squared(double peak) {
    return LightDistribution::beam(Degrees(90), Lumens(2 * pi * peak / 3));
}

/// Lux of a flat Lambertian square [0, 1]² at height 1 facing down, at a point below its corner.
double square_above_corner_lux(double luminance, int n) {
    double lux = 0;
    for (int i = 0; i < n; ++i)
        for (int k = 0; k < n; ++k)
            lux +=
                level_lux(lamp(lambertian(luminance / n / n), {(i + 0.5) / n, (k + 0.5) / n, 1}), {0, 0, 0});
    return lux;
}

} // namespace

TEST_CASE("level and upright lux of one lamp follow the cosine and the inverse square") {
    // E_h = I h / (h² + x²)^1.5, E_v = I x / (h² + x²)^1.5 (textbooks; architects' examination notes); with
    // the facing azimuth off by psi: times cos psi.
    const PlacedLight light = lamp(isotropic(250), {0, 0, 1.3});
    const double h = 1.3;
    const double x = 2.1;
    const double cubed = std::pow(h * h + x * x, 1.5);
    CHECK(level_lux(light, {x, 0, 0}) == Approx(250 * h / cubed));
    CHECK(level_lux(light, {x, 0, 0}) == Approx(250 * std::pow(h / std::hypot(h, x), 3) / (h * h)));
    CHECK(unblocked_lux(light, {x, 0, 0}, {-1, 0, 0}) == Approx(250 * x / cubed));
    const double off = 35 * degree;
    CHECK(unblocked_lux(light, {x, 0, 0}, {-std::cos(off), std::sin(off), 0}) ==
          Approx(250 * x / cubed * std::cos(off)));
    CHECK(unblocked_lux(light, {x, 0, 0}, {1, 0, 0}) == 0); // from behind
    CHECK(level_lux(light, {x, 0, 2}) == 0);                // from below
}

TEST_CASE("the beam model has the table's exponent, field angle, centre intensity and share in the beam") {
    // n = ln 0.5 / ln cos(B/2), Imax = lm (n + 1) / 2 pi, share inside half-angle a: 1 - cos^(n+1) a (by
    // formula).
    struct Row {
        double beam, exponent, field, candela_per_lumen, share;
    };
    const Row rows[] = {{10, 181.806, 18.2, 29.0945, 0.502}, {15, 80.674, 27.2, 12.9988, 0.504},
                        {24, 31.372, 43.4, 5.1521, 0.511},   {36, 13.813, 64.3, 2.3575, 0.525},
                        {60, 4.819, 103.3, 0.9261, 0.567},   {90, 2.000, 143.1, 0.4775, 0.646},
                        {120, 1.000, 168.5, 0.3183, 0.750}};
    for (const Row& row : rows) {
        INFO("beam " << row.beam);
        const LightDistribution d = LightDistribution::beam(Degrees(row.beam), Lumens(1));
        CHECK(d.peak() == Approx(row.candela_per_lumen).margin(5e-5));
        CHECK(2 * d.half_field({}) / degree == Approx(row.field).margin(0.051));
        CHECK(2 * pi * d.peak() - 1 == Approx(row.exponent).margin(6e-4));
        const double half = row.beam / 2 * degree;
        CHECK(d.candela({std::cos(half), std::sin(half), 0}) == Approx(d.peak() / 2));
        CHECK(1 - std::pow(std::cos(half), 2 * pi * d.peak()) == Approx(row.share).margin(6e-4));
        CHECK(d.candela({-0.1, 0, 0}) == 0);
    }
}

TEST_CASE("a cosine-squared lamp 0.6 m up gives 333.333 lx below and 5.96285 lx at 1.2 m") {
    const PlacedLight light = lamp(cosine_squared(120), {0, 0, 0.6}); // E = Imax cos^(n+3) / h² (by formula)
    CHECK(level_lux(light, {0, 0, 0}) == Approx(333.333).epsilon(1e-5));
    CHECK(level_lux(light, {0, 1.2, 0}) == Approx(5.96285).epsilon(1e-5));
    CHECK(cosine_squared(120).flux() == Approx(251.327).epsilon(1e-5));
    double flux = 0; // mean over the disc of radius 1.2 m: 50.5865 lx (by formula)
    constexpr int rings = 4000;
    for (int i = 0; i < rings; ++i) {
        const double r = 1.2 * (i + 0.5) / rings;
        flux += level_lux(light, {r, 0, 0}) * 2 * pi * r * 1.2 / rings;
    }
    CHECK(flux / (pi * 1.2 * 1.2) == Approx(50.5865).epsilon(1e-5));
}

TEST_CASE("half of an isotropic lamp's flux falls on the ground below it") {
    // Within radius R: 2 pi I (1 - h / sqrt(h² + R²)), so 2 pi I over all the ground.
    const PlacedLight light = lamp(isotropic(40), {0, 0, 1});
    double flux = 0;
    double inner = 0;
    for (int i = 0; i < 20000; ++i) { // rings that widen outwards
        const double outer = std::sinh(8.0 * (i + 1) / 20000);
        flux += level_lux(light, {(inner + outer) / 2, 0, 0}) * pi * (outer * outer - inner * inner);
        inner = outer;
    }
    CHECK(flux == Approx(2 * pi * 40 * (1 - 1 / std::hypot(1, inner))).epsilon(1e-5));
    CHECK(isotropic(40).flux() == Approx(4 * pi * 40));
}

TEST_CASE("the best height for a point aside is x sqrt((n + 1) / 2)") {
    struct Row {
        LightDistribution light;
        double height, lux; ///< lux 0: not tabulated
    };
    const Row rows[] = {{isotropic(100), 0.70711 * 2, 9.62250},
                        {lambertian(100), 2.0, 6.25},
                        {cosine_squared(100), 1.22474 * 2, 0}}; // by formula
    for (const Row& row : rows) {
        const auto lux = [&](double height) { return level_lux(lamp(row.light, {0, 0, height}), {2, 0, 0}); };
        CHECK(lux(row.height) > lux(row.height * 1.01));
        CHECK(lux(row.height) > lux(row.height * 0.99));
        if (row.lux > 0) CHECK(lux(row.height) == Approx(row.lux).epsilon(1e-5));
    }
}

TEST_CASE("a batwing gives the same lux from the middle to its rim, and none beyond") {
    // I0 10 cd, h 0.5 m, cutoff 65: E = I0 / h² = 40 lx to radius 1.07225 m, flux pi I0 tan² = 144.479 lm.
    const LightDistribution d = LightDistribution::batwing(Degrees(65), Lumens(144.479));
    const PlacedLight light = lamp(d, {0, 0, 0.5});
    for (const double r : {0.0, 0.3, 0.7, 1.0, 1.072})
        CHECK(level_lux(light, {r, 0, 0}) == Approx(40).epsilon(1e-5));
    CHECK(level_lux(light, {1.0726, 0, 0}) == 0);
    CHECK(d.flux() == Approx(144.479));
    CHECK(d.half_field({}) / degree == Approx(65));
}

TEST_CASE("a hat gives one intensity between its shadow and its cutoff") {
    const LightDistribution d = LightDistribution::hat(Degrees(10), Degrees(75), Lumens(100));
    const double expected = 100 / (2 * pi * (std::cos(10 * degree) - std::cos(75 * degree)));
    const auto at = [&](double angle) {
        return d.candela({std::cos(angle * degree), std::sin(angle * degree), 0});
    };
    CHECK(at(9.99) == 0);
    CHECK(at(10) == Approx(expected));
    CHECK(at(40) == Approx(expected));
    CHECK(at(75) == Approx(expected));
    CHECK(at(75.01) == 0);
    CHECK(d.flux() == Approx(100));
    CHECK(LightDistribution::hat(Degrees(75), Degrees(75), Lumens(100)).dark());
}

TEST_CASE("extended sources summed from small emitters agree with their closed forms") {
    SECTION(
        "Lambertian disc on its axis: pi L R² / (R² + h²), and 4 % above it by inverse square at h = 5 R") {
        double lux = 0;
        for (int i = 0; i < 400; ++i) {
            const double r = 0.1 * (i + 0.5) / 400;
            lux += level_lux(lamp(lambertian(5000 * 2 * pi * r * 0.1 / 400), {r, 0, 0.5}), {0, 0, 0});
        }
        CHECK(lux == Approx(604.152).epsilon(1e-5));
        const double as_point = level_lux(lamp(lambertian(5000 * pi * 0.01), {0, 0, 0.5}), {0, 0, 0});
        CHECK(as_point == Approx(628.319).epsilon(1e-5));
        CHECK(as_point / lux == Approx(1.04).epsilon(1e-4)); // R² / h²: the five-times rule
    }
    SECTION("Lambertian sphere: pi L (R / h)²") {
        double lux = 0;
        for (int i = 0; i < 2000; ++i) {
            const double t = pi / 2 * (i + 0.5) / 2000;
            const double area = 0.05 * 0.05 * std::sin(t) * (pi / 2 / 2000) * 2 * pi;
            lux += level_lux(lamp(lambertian(8000 * area), {0.05 * std::sin(t), 0, 1 - 0.05 * std::cos(t)},
                                  Degrees(t / degree)),
                             {0, 0, 0}); // all of a ring gives the same on the axis
        }
        CHECK(lux == Approx(62.8319).epsilon(1e-4));
    }
    SECTION("diffuse line, its end opposite: I' / 2d (alpha + sin alpha cos alpha)") {
        double lux = 0;
        for (int i = 0; i < 2000; ++i)
            lux += level_lux(lamp(lambertian(200.0 / 2000), {(i + 0.5) / 2000, 0, 0.8}), {0, 0, 0});
        CHECK(lux == Approx(172.983).epsilon(1e-5));
    }
    SECTION("Lambertian square above a corner: 0.435210 L at a height of one side") {
        CHECK(square_above_corner_lux(1000, 100) == Approx(435.210).epsilon(1e-4));
    }
    SECTION("uniform sky: pi L on the level, pi L / 2 upright") {
        double level = 0;
        double upright = 0;
        for (int i = 0; i < 150; ++i)
            for (int k = 0; k < 150; ++k) {
                const double t = pi / 2 * (i + 0.5) / 150;
                const double f = 2 * pi * (k + 0.5) / 150;
                const SpacePoint at{10 * std::sin(t) * std::cos(f), 10 * std::sin(t) * std::sin(f),
                                    10 * std::cos(t)};
                const double area = 100 * std::sin(t) * (pi / 2 / 150) * (2 * pi / 150);
                const PlacedLight piece = aimed_lamp(lambertian(area), at, {0, 0, 0});
                level += level_lux(piece, {0, 0, 0});
                upright += unblocked_lux(piece, {0, 0, 0}, {1, 0, 0});
            }
        CHECK(level == Approx(3.14159).epsilon(1e-4));
        CHECK(upright == Approx(1.57080).epsilon(2e-4));
    }
    SECTION("Lambertian emitter: lumens are pi times the centre candela") {
        CHECK(lambertian(50).peak() == Approx(50));
        CHECK(lambertian(50).flux() == Approx(pi * 50));
    }
}

TEST_CASE("an aimed beam's footprint runs from h tan(a - B/2) to h tan(a + B/2)") {
    const double h = 2;
    const PlacedLight light = lamp(LightDistribution::beam(Degrees(30), Lumens(400)), {0, 0, h}, Degrees(25));
    const auto candela_at = [&](double x, double y) {
        const Vector3 ray = from_to({0, 0, h}, {x, y, 0});
        return level_lux(light, {x, y, 0}) * std::pow(length(ray), 3) / h;
    };
    const double centre = light.photometry->distribution.peak();
    CHECK(candela_at(h * std::tan(25 * degree), 0) == Approx(centre));
    CHECK(candela_at(h * std::tan(10 * degree), 0) == Approx(centre / 2));
    CHECK(candela_at(h * std::tan(40 * degree), 0) == Approx(centre / 2));
    CHECK(candela_at(h * std::tan(25 * degree), h / std::cos(25 * degree) * std::tan(15 * degree)) ==
          Approx(centre / 2));
}

TEST_CASE("lux of several lamps add up") {
    LightScene scene;
    scene.lights = {lamp(isotropic(30), {0, 0, 1}), lamp(cosine_squared(80), {2, 1, 0.6})};
    LitPoints target;
    target.points = {{0.5, 0.2, 0}, {1.5, 1, 0}};
    illuminate(scene, target);
    for (std::size_t i = 0; i < 2; ++i)
        CHECK(target.lux[i] == Approx(level_lux(scene.lights[0], target.points[i]) +
                                      level_lux(scene.lights[1], target.points[i])));
}
