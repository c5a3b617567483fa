// Worked examples as printed in textbooks, course notes and trade pages, each recomputed with the engine.
#include "lamps.hpp"

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

struct PointExample {
    const char* source;
    double candela;
    double height; ///< m above the lit plane
    double aside;  ///< m on the plan
    double lux;
    double tolerance; ///< half of the last digit printed, or as said
};

} // namespace

TEST_CASE("published examples of a bare lamp over a level plane come out as printed") {
    const PointExample rows[] = {
        {"Textbook of Electrical Technology, ex. 49.1: 1200 lm, 8 m up, 6 m aside", 1200 / (4 * pi), 8, 6,
         0.76, 0.005},
        {"school physics answer page: 15 lx 0.6 m below, then 0.8 m aside: 3.24 lx", 5.4, 0.6, 0.8, 3.24,
         0.005},
        {"school physics answer page: the same lamp, 15 lx below", 5.4, 0.6, 0, 15, 0.05},
        {"engineering course notes, utilisation of energy: 800 cd, 4 m up, 3 m aside", 800, 4, 3, 25.6, 0.05},
        {"school illuminance worksheet: 405 lm, 4.0 m below", 405 / (4 * pi), 4, 0, 2.0, 0.05},
        {"school illuminance worksheet: 1535 lm gives 585 lx at 0.457 m", 1535 / (4 * pi), 0.457, 0, 585,
         0.5},
    };
    for (const PointExample& row : rows) {
        INFO(row.source);
        const PlacedLight light = lamp(isotropic(row.candela), {1, 2, row.height});
        CHECK(level_lux(light, {1 + row.aside, 2, 0}) == Approx(row.lux).margin(row.tolerance));
        CHECK(level_lux(light, {1, 2 - row.aside, 0}) == Approx(row.lux).margin(row.tolerance));
    }
}

TEST_CASE("a tenth of the light below a lamp 10 m up is met 19.08 m aside") {
    // Textbook of Electrical Technology, ex. 49.2.
    const PlacedLight light = lamp(isotropic(100), {0, 0, 10});
    CHECK(level_lux(light, {19.08, 0, 0}) / level_lux(light, {0, 0, 0}) == Approx(0.1).epsilon(5e-4));
}

TEST_CASE("a plane turned 37 degrees from the ray of a 628 lm lamp at 1 m gets 40 lx") {
    // School physics answer page; it takes cos 37 as 0.8, hence the wider margin.
    const PlacedLight light = lamp(isotropic(628 / (4 * pi)), {0, 0, 1});
    const Vector3 normal{std::sin(37 * degree), 0, std::cos(37 * degree)};
    CHECK(unblocked_lux(light, {0, 0, 0}, normal) == Approx(40).margin(0.1));
}

TEST_CASE("a row of seven 100 cd lamps gives 5.81 lx below the middle one and 3.75 lx midway") {
    // Text Book on Power System Engineering, ch. Illumination, ex. 4.7, p. 755, by its published solution
    // script.
    const auto row = [](int lamps, double x) {
        double lux = 0;
        for (int i = 0; i < lamps; ++i)
            lux += level_lux(lamp(isotropic(100), {9.15 * i, 0, 4.575}), {x, 0, 0});
        return lux;
    };
    CHECK(row(7, 3 * 9.15) == Approx(5.81).margin(0.005));
    CHECK(row(6, 2.5 * 9.15) == Approx(3.75).margin(0.005));
}

TEST_CASE("a Lambertian disc of radius 0.25 m that gives 70 lx at 0.75 m emits 700 lm per square metre") {
    // Irodov, Problems in General Physics, 5.11. The disc is summed from small flat emitters.
    constexpr int rings = 200;
    double lux = 0;
    for (int i = 0; i < rings; ++i) {
        const double r = 0.25 * (i + 0.5) / rings;
        const double area = 2 * pi * r * 0.25 / rings;
        lux += level_lux(lamp(lambertian(700 / pi * area), {r, 0, 0.75}), {0, 0, 0});
    }
    CHECK(lux == Approx(70).epsilon(1e-4));
}

TEST_CASE("a luminous sphere of radius 0.06 m and 20,000 cd per square metre gives 25 lx at 3 m") {
    // Irodov 5.12: 25 as printed, 25.133 unrounded. The sphere is summed from emitters that face outwards.
    constexpr int rings = 300;
    double lux = 0;
    for (int i = 0; i < rings; ++i) {
        const double t = pi / 2 * (i + 0.5) / rings;
        const double area = 0.06 * 0.06 * std::sin(t) * (pi / 2 / rings) * 2 * pi;
        const SpacePoint at{0.06 * std::sin(t), 0, 3 - 0.06 * std::cos(t)}; // all of a ring gives the same
        lux += level_lux(lamp(lambertian(20000 * area), at, Degrees(t / degree)), {0, 0, 0});
    }
    CHECK(lux == Approx(25.133).epsilon(1e-3));
}

TEST_CASE("a 36 degree beam from 6 ft up is a circle of about 4 ft") {
    // Lamp-selection note on a public web page: 3.9 ft by D = 2 d tan(B/2). On the rim the beam has half of
    // its centre intensity, so the level lux there is 0.5 cos³ of 18 degrees of that in the middle.
    const PlacedLight light =
        lamp(LightDistribution::beam(Degrees(36), Lumens(300)), {0, 0, feet(6).value()});
    const double radius = feet(3.899 / 2).value();
    CHECK(level_lux(light, {radius, 0, 0}) / level_lux(light, {0, 0, 0}) ==
          Approx(0.5 * std::pow(std::cos(18 * degree), 3)).epsilon(1e-3));
}

TEST_CASE("a light 5 ft above and 4 ft aside throws 6.4 ft") {
    // Same page. Facing the light, lux are candela over the throw squared.
    const PlacedLight light = lamp(isotropic(100), {feet(4).value(), 0, feet(5).value()});
    const double lux = unblocked_lux(light, {0, 0, 0}, unit(Vector3{4, 0, 5}));
    CHECK(std::sqrt(100 / lux) == Approx(feet(6.4).value()).margin(feet(0.05).value()));
}

TEST_CASE("two answers that are in print but wrong do not come out") {
    // 100 cd, 4 m up, 3 m aside: printed 2.55 lx (cosine taken twice), right 3.200.
    const double oblique = level_lux(lamp(isotropic(100), {0, 0, 4}), {3, 0, 0});
    CHECK(oblique == Approx(3.2).epsilon(1e-12));
    CHECK(std::abs(oblique - 2.55) > 0.5);
    // 2000 lx at 2 m: printed 4000 cd (distance not squared), right 8000.
    CHECK(level_lux(lamp(isotropic(8000), {0, 0, 2}), {0, 0, 0}) == Approx(2000).epsilon(1e-12));
    CHECK(level_lux(lamp(isotropic(4000), {0, 0, 2}), {0, 0, 0}) == Approx(1000).epsilon(1e-12));
}
