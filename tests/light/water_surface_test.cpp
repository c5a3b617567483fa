#include "rillwatt/light/water_surface.hpp"

#include "lamps.hpp"

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

PlacedLight sunk(const LightDistribution& distribution, double depth, Degrees tilt = Degrees(180)) {
    PlacedLight light = lamp(distribution, {0, 0, -depth}, tilt);
    light.water_level = 0;
    return light;
}

} // namespace

TEST_CASE("angles, transmittance and intensity out of still water follow Snell and Fresnel") {
    // Snell; Fresnel as in Born & Wolf; far field by the flux tube, n = 1.333 (computed from the formulas).
    struct Row {
        double in_water, in_air, through, ratio;
    };
    const Row rows[] = {{0, 0, 0.97963, 0.5513},      {10, 13.38, 0.97959, 0.5446},
                        {20, 27.12, 0.97895, 0.5218}, {30, 41.80, 0.97448, 0.4721},
                        {40, 58.96, 0.94442, 0.3577}, {45, 70.49, 0.86054, 0.2288},
                        {48, 82.14, 0.56692, 0.0652}};
    for (const Row& row : rows) {
        INFO("angle in water " << row.in_water);
        const double w = row.in_water * degree;
        CHECK(*angle_in_air(w) / degree == Approx(row.in_air).margin(0.0051));
        CHECK(surface_transmittance(w) == Approx(row.through).margin(6e-6));
        CHECK(far_intensity_ratio(w) == Approx(row.ratio).margin(6e-5));
    }
    CHECK(angle_in_air(48.60 * degree));
    CHECK_FALSE(angle_in_air(48.61 * degree)); // critical angle 48.607: textbooks print 48.6
    CHECK(surface_transmittance(60 * degree) == 0);
    CHECK(1 - surface_transmittance(36.88 * degree) == Approx(0.039136).epsilon(1e-3)); // Brewster
}

TEST_CASE("reflection seen from the air side is the same along a ray") {
    const double rows[][2] = {{20, 0.0206}, {40, 0.0245}, {50, 0.0337}, {60, 0.0597},
                              {70, 0.1335}, {80, 0.3479}, {85, 0.5835}}; // degrees in air, share reflected
    for (const auto& row : rows)
        CHECK(1 - surface_transmittance(std::asin(std::sin(row[0] * degree) / 1.333)) ==
              Approx(row[1]).margin(6e-5));
}

TEST_CASE("400 cd straight up from 0.3 m of water give 146.943 lx at 1 m, 236.686 without water") {
    const PlacedLight light = sunk(isotropic(400), 0.3); // E = I T / (z + n H)² (by formula)
    CHECK(unblocked_lux(light, {0, 0, 1}, {0, 0, -1}) == Approx(146.943).epsilon(1e-5));
    PlacedLight dry = light;
    dry.water_level.reset();
    CHECK(unblocked_lux(dry, {0, 0, 1}, {0, 0, -1}) == Approx(236.686).epsilon(1e-5));
}

TEST_CASE("the ray from a sunk lamp to a falls face meets it where bent geometry says") {
    // Depth 0.3 m, 0.5 m away: height on the face h = (D - z tan θw) / tan θa (by formula).
    const double rows[][2] = {{10, 1.879}, {20, 0.763}, {30, 0.366}, {40, 0.149}};
    for (const auto& row : rows) {
        const RefractedRay ray = refracted_ray(0.3, row[1], 0.5);
        CHECK(ray.in_water / degree == Approx(row[0]).margin(0.06));
        CHECK(ray.exit + row[1] * std::tan(ray.in_air) == Approx(0.5));
        CHECK(std::sin(ray.in_air) == Approx(1.333 * std::sin(ray.in_water)));
        CHECK(ray.path * std::cos(ray.in_water) == Approx(0.3));
    }
}

TEST_CASE("rays to points near the surface and far away are found") {
    for (const double height : {1e-6, 1e-3, 0.05, 3.0})
        for (const double distance : {0.0, 1e-9, 0.1, 2.0, 50.0}) {
            INFO("height " << height << ", distance " << distance);
            const RefractedRay ray = refracted_ray(0.1, height, distance);
            CHECK(ray.exit + height * std::tan(ray.in_air) == Approx(distance).margin(1e-9));
            CHECK(ray.horizontal >= 0);
            CHECK(std::isfinite(ray.horizontal));
        }
}

TEST_CASE("light leaving water: what crosses a plane above is what the surface lets through") {
    // Escape from a Lambertian source facing up: 0.52541 with Fresnel; by angle alone 1 / n² = 0.56278, from
    // the isotropic upper half 0.33877 (computed from the formulas).
    double escaped = 0;
    double by_angle = 0;
    constexpr int steps = 200000;
    for (int i = 0; i < steps; ++i) {
        const double w = pi / 2 * (i + 0.5) / steps;
        const double share = 2 * std::sin(w) * std::cos(w) * (pi / 2 / steps);
        escaped += share * surface_transmittance(w);
        if (angle_in_air(w)) by_angle += share;
    }
    CHECK(escaped == Approx(0.52541).epsilon(2e-5));
    CHECK(by_angle == Approx(0.56278).epsilon(2e-5));
    CHECK(1 - std::cos(std::asin(1 / 1.333)) == Approx(0.33877).epsilon(2e-5));

    const PlacedLight light = sunk(lambertian(100 / pi), 0.25); // 100 lm
    double flux = 0;
    double inner = 0;
    for (int i = 0; i < 40000; ++i) {
        const double outer = std::sinh(9.0 * (i + 1) / 40000);
        flux += unblocked_lux(light, {(inner + outer) / 2, 0, 0.4}, {0, 0, -1}) * pi *
                (outer * outer - inner * inner);
        inner = outer;
    }
    CHECK(flux == Approx(52.541).epsilon(1e-3));
}

TEST_CASE("a cylinder round a sunk and tilted lamp catches what the surface lets pass") {
    // Upright walls of radius 1 m up to 2 m, and the lid: together all that leaves the water.
    const PlacedLight light = sunk(LightDistribution::beam(Degrees(50), Lumens(100)), 0.2, Degrees(165));
    double out = 0; // through the surface, counted in the water
    double caught = 0;
    constexpr int n = 500;
    for (int i = 0; i < n; ++i)
        for (int k = 0; k < n; ++k) {
            const double w = pi / 2 * (i + 0.5) / n;
            const double f = 2 * pi * (k + 0.5) / n;
            const Vector3 d{std::sin(w) * std::cos(f), std::sin(w) * std::sin(f), std::cos(w)};
            out += light.photometry->distribution.candela(light.pose.local(d)) * surface_transmittance(w) *
                   std::sin(w) * (pi / 2 / n) * (2 * pi / n);
            const double z = 2.0 * (i + 0.5) / n;
            const double r = (i + 0.5) / n;
            caught += unblocked_lux(light, {std::cos(f), std::sin(f), z}, {-std::cos(f), -std::sin(f), 0}) *
                      (2.0 / n) * (2 * pi / n);
            caught += unblocked_lux(light, {r * std::cos(f), r * std::sin(f), 2}, {0, 0, -1}) * r / n *
                      (2 * pi / n);
        }
    CHECK(caught == Approx(out).epsilon(1e-3));
}

TEST_CASE("water takes exp(-K path) of the light") {
    PlacedLight light = sunk(isotropic(400), 0.3);
    const double clear = unblocked_lux(light, {0.4, 0, 0.8}, {-1, 0, 0});
    light.attenuation = 3; // an algal bloom: 0.407 over 0.3 m, straight up
    CHECK(unblocked_lux(light, {0, 0, 1}, {0, 0, -1}) == Approx(146.943 * 0.407).epsilon(1.5e-3));
    const double path = refracted_ray(0.3, 0.8, 0.4).path;
    CHECK(unblocked_lux(light, {0.4, 0, 0.8}, {-1, 0, 0}) == Approx(clear * std::exp(-3 * path)));
}
