// Lights count as far as they give something: what is left out is proven negligible.
#include "rillwatt/light/falls_light.hpp"
#include "rillwatt/light/scene_index.hpp"
#include "rillwatt/light/walk_light.hpp"

#include <catch2/catch.hpp>

#include "gardens.hpp"
#include "lamps.hpp"
#include <random>

namespace rillwatt {

namespace {

using test::lamp;

double between(std::mt19937& random, double low, double high) {
    return low + (high - low) * (static_cast<double>(random()) / 4294967296.0);
}

/// A web with a bright ring and a dim rest, for directions that no closed form favours.
LightDistribution ringed_web() {
    return LightDistribution::web(std::make_shared<const PhotometricWeb>(
        PhotometricType::c, std::vector<double>{0, 30, 40, 50, 90}, std::vector<double>{0},
        std::vector<double>{20, 20, 900, 20, 0}));
}

LightDistribution any_distribution(std::mt19937& random) {
    switch (random() % 5) {
    case 0:
        return LightDistribution::hat(Degrees(10), Degrees(80), Lumens(140));
    case 1:
        return LightDistribution::batwing(Degrees(75), Lumens(200));
    case 2:
        return LightDistribution::beam(Degrees(between(random, 15, 120)), Lumens(400));
    case 3:
        return ringed_web();
    default:
        return test::isotropic(30);
    }
}

PlacedLight any_light(std::mt19937& random, double spread) {
    const bool wet = random() % 4 == 0;
    const SpacePoint at{between(random, 0, spread), between(random, 0, spread),
                        wet ? between(random, -0.6, -0.05) : between(random, 0.1, 3)};
    const double tilt = random() % 2 == 0 ? 0 : between(random, 0, 180);
    PlacedLight light = lamp(any_distribution(random), at, Degrees(wet ? 180 - tilt : tilt),
                             Degrees(between(random, 0, 360)));
    if (wet) light.water_level = 0;
    return light;
}

} // namespace

TEST_CASE("beyond its reach a light gives no more than a negligible illuminance, whatever its kind") {
    std::mt19937 random(21);
    int beyond = 0;
    for (int round = 0; round < 400; ++round) {
        const PlacedLight light = any_light(random, 1);
        HeightRange heights;
        heights.include(between(random, -0.2, 0.4));
        heights.include(heights.low + between(random, 0, 2));
        const double level = reach_on_level(light, heights);
        const double any = reach_on_any_plane(light, heights);
        CHECK(any >= 0);
        for (int k = 0; k < 60; ++k) {
            const double bearing = between(random, 0, 2 * pi);
            const double share = std::exp(between(random, 0, 3)); // just beyond, and far beyond
            const auto point_at = [&](double reach) {
                return SpacePoint{light.pose.at.x + reach * share * std::cos(bearing),
                                  light.pose.at.y + reach * share * std::sin(bearing),
                                  between(random, heights.low, heights.high)};
            };
            CHECK(unblocked_lux(light, point_at(std::max(0.0, level)), straight_up) <= negligible_lux);
            const SpacePoint point = point_at(any);
            const Vector3 towards = from_to(point, light.pose.at);
            if (length(towards) < 1e-6) continue;
            CHECK(unblocked_lux(light, point, unit(towards)) <= negligible_lux);
            const double level_side = std::hypot(towards.x, towards.y);
            if (level_side > 0)
                CHECK(unblocked_lux(light, point, {towards.x / level_side, towards.y / level_side, 0}) <=
                      negligible_lux);
            ++beyond;
        }
    }
    CHECK(beyond > 20000);
}

TEST_CASE("a path light reaches exactly as far as its cutoff") {
    // 0.4572 m tan 80 degrees = 2.593 m, by hand
    const PlacedLight light =
        lamp(LightDistribution::hat(Degrees(10), Degrees(80), Lumens(140)), {0, 0, 0.4572});
    HeightRange ground;
    ground.include(0);
    CHECK(reach_on_level(light, ground) == Approx(2.593).epsilon(0.025));
    CHECK(reach_on_level(light, ground) >= 2.593);
}

TEST_CASE("a garden lit by way of the index differs from all lights at every point by next to nothing") {
    std::mt19937 random(22);
    for (const int count : {80, 400}) {
        const double spread = count / 4.0;
        Site site = test::loss_free_site();
        site.walks.push_back(test::walk_of("w", {{0, 0}, {spread / 2, spread / 3}, {spread, 0}}, 1.2));
        site.falls.push_back(test::falls_of("f", {spread / 2, spread / 2}, {spread / 2 + 3, spread / 2}, 1));
        for (int k = 0; k < 10; ++k)
            site.areas.push_back(test::area_of("shed", AreaKind::building, between(random, 0, spread),
                                               between(random, 0, spread), spread, spread, 2.5));
        LightScene scene;
        scene.obstacles = Obstacles(site);
        for (int k = 0; k < count; ++k)
            scene.lights.push_back(any_light(random, spread));
        const SceneIndex index(site, scene, lit_heights(site));
        LitPoints walk;
        walk.points = walk_points(site.walks[0]);
        for (LitPoints lit : {walk, falls_face(site.falls[0])}) {
            LitPoints all = lit;
            index.illuminate(lit);
            illuminate(scene, all);
            double most = 0;
            double brightest = 0;
            for (std::size_t i = 0; i < all.lux.size(); ++i) {
                REQUIRE(lit.lux[i] <= all.lux[i]);
                most = std::max(most, all.lux[i] - lit.lux[i]);
                brightest = std::max(brightest, all.lux[i]);
            }
            CHECK(brightest > 0);
            CHECK(most <= negligible_lux * static_cast<double>(scene.lights.size()));
            const bool few = scene.lights.size() <= so_few_that_all_count;
            CHECK((most == 0) == few);
        }
    }
}

TEST_CASE(
    "walks and falls of any legal size are cut into a bounded number of cells, and say how large they are") {
    // 4,000 ft by 4,000 ft would take 148 million cells of 0.1 m.
    const double wide = feet(4000).value();
    const Falls cliff = test::falls_of("f", {0, 0}, {wide, 0}, wide);
    CHECK(falls_face(cliff).points.size() <= 100000);
    CHECK(falls_face(cliff).points.size() > 20000);
    CHECK(falls_cell(cliff).value() == Approx(6.4)); // 0.1 m doubled six times
    const Walk airfield = test::walk_of("w", {{0, 0}, {10000, 0}, {10000, 10000}}, 10000);
    CHECK(walk_points(airfield).size() <= 100000);
    CHECK(walk_cell(airfield) > Metres(0.25));
    CHECK(walk_cell(test::walk_of("w", {{0, 0}, {1500, 0}}, 1.2)) == Metres(0.25));
    CHECK(falls_cell(test::falls_of("f", {0, 0}, {30, 0}, 30)) == Metres(0.1));
    Site site = test::loss_free_site();
    site.falls = {cliff, test::falls_of("small", {0, 0}, {2, 0}, 1)};
    site.walks = {airfield};
    const LightResult light = *compute_light(site, {}, nullptr, {}).value;
    CHECK(light.falls[0].coarse);
    CHECK(light.falls[0].cell == falls_cell(cliff));
    CHECK_FALSE(light.falls[1].coarse);
    CHECK(light.walks[0].coarse);
}

} // namespace rillwatt
