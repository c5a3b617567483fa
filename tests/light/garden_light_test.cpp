#include "rillwatt/light/falls_light.hpp"
#include "rillwatt/light/walk_light.hpp"
#include "rillwatt/light/water_surface.hpp"

#include "gardens.hpp"
#include "lamps.hpp"

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

LightResult light_of(const Site& site, const Catalog& catalog, const SiteSolution* solution = nullptr,
                     const std::vector<SpacePoint>& points = {}) {
    LoadResult<LightResult> result = compute_light(site, catalog, solution, {}, points);
    REQUIRE(result);
    return std::move(*result.value);
}

double lux_at(const Site& site, const Catalog& catalog, SpacePoint point,
              const SiteSolution* solution = nullptr) {
    return light_of(site, catalog, solution, {point}).points[0].horizontal.value();
}

/// One lamp's volts in the nominal case.
SiteSolution solution_with(Volts volts) {
    SiteSolution solution;
    solution.cases.resize(3);
    LampResult lamp_result;
    lamp_result.volts = volts;
    solution.cases[0].lamps.push_back(lamp_result);
    return solution;
}

} // namespace

TEST_CASE("a walk is cut into equal cells no larger than 0.25 m and sampled at their centres on the ground") {
    Walk walk = walk_of("w", {{0, 0}, {2, 0}, {2, 1.1}}, 0.9);
    walk.elevation = Metres(0.3);
    const std::vector<SpacePoint> points = walk_points(walk);
    REQUIRE(points.size() == 8 * 4 + 5 * 4); // 2 m: 8 cells; 1.1 m: 5; 0.9 m across: 4
    CHECK(points[0].x == Approx(0.125));
    CHECK(points[0].y == Approx(-0.3375));
    CHECK(points[0].z == Approx(0.3));
    CHECK(points.back().x == Approx(2 - 0.3375));
    CHECK(points.back().y == Approx(1.1 - 0.11));
    CHECK(walk_points(walk_of("w", {{0, 0}, {0, 0}}, 1)).empty());
    CHECK(walk_points(walk_of("w", {{0, 0}, {0.5, 0}}, 0.25)).size() == 2);
}

TEST_CASE("the light on a walk is the mean, least and greatest of its points, judged against its class") {
    // EN 13201-2:2015 table 3. An isotropic lamp of 20 cd 1 m above the middle of a 2 x 0.25 m walk:
    // E = 20 / (1 + x²)^1.5 at x = 0.125, 0.375, 0.625, 0.875, twice each.
    Site site = loss_free_site();
    site.walks.push_back(walk_of("w", {{-1, 0}, {1, 0}}, 0.25));
    site.fixtures.push_back(light_at("L", "bulb", 0, 0));
    site.fixtures[0].mounting = Metres(1);
    FixtureType bulb = light_type("bulb", FixtureKind::other, FileDistribution{"bulb.ies"}, 80 * pi);
    Lm63 file;
    file.vertical = {0, 180};
    file.candela = [](double, double) { return 20.0; };
    const auto walk_light_for = [&](std::optional<std::string> target) {
        site.walks[0].target = target;
        return compute_light(site, catalog_of({bulb}), nullptr, {{"bulb.ies", file.text()}}).value->walks[0];
    };
    const auto lux = [](double x) { return 20 / std::pow(1 + x * x, 1.5); };
    const WalkLight light = walk_light_for("P1");
    const double mean = (lux(0.125) + lux(0.375) + lux(0.625) + lux(0.875)) / 4;
    CHECK(light.mean.value() == Approx(mean));
    CHECK(light.minimum.value() == Approx(lux(0.875)));
    CHECK(light.maximum.value() == Approx(lux(0.125)));
    CHECK(light.uniformity == Approx(lux(0.875) / mean));
    CHECK(light.target_mean->value() == 15);
    CHECK(light.target_minimum->value() == 3);
    CHECK_FALSE(light.meets); // 14.2 lx
    CHECK(walk_light_for("P2").meets);
    CHECK(walk_light_for({}).meets);
    CHECK_FALSE(walk_light_for("P7").target_mean);
    site.walks[0].min_lux = Lux(lux(0.875) * 1.001);
    CHECK_FALSE(walk_light_for("P2").meets); // a given figure stands in place of the class's
    site.walks[0].min_lux = Lux(lux(0.875));
    CHECK(walk_light_for("P2").meets); // met exactly
}

TEST_CASE("the classes of EN 13201-2:2015 table 3 are as published") {
    const struct {
        const char* name;
        double mean, minimum;
    } rows[] = {{"P1", 15, 3}, {"P2", 10, 2}, {"P3", 7.5, 1.5}, {"P4", 5, 1}, {"P5", 3, 0.6}, {"P6", 2, 0.4}};
    for (const auto& row : rows) {
        CHECK(walk_class(row.name)->mean->value() == row.mean);
        CHECK(walk_class(row.name)->minimum->value() == row.minimum);
    }
    CHECK_FALSE(walk_class("P8"));
}

TEST_CASE("a falls face looks to whoever has the left end of the lip on the left") {
    const Falls falls = falls_of("f", {21, 10}, {24, 10}, 0.45, 0.2);
    CHECK(falls_normal(falls) == Vector3{0, -1, 0}); // bearing 270
    const LitPoints face = falls_face(falls);
    CHECK(face.points.size() == 30 * 5); // cells of 0.1 by 0.09 m
    CHECK(face.points[0].x == Approx(21.05));
    CHECK(face.points[0].z == Approx(0.2 + 0.045));
    CHECK(face.points.back().z == Approx(0.65 - 0.045));
}

TEST_CASE("a dry light in front of a face lights it, one behind it does not") {
    Site site = loss_free_site();
    site.falls.push_back(falls_of("f", {0, 0}, {0.1, 0}, 0.1)); // one cell, faces -y, centre (0.05, 0, 0.05)
    site.fixtures.push_back(light_at("L", "spot", 0.05, -2));
    site.fixtures[0].mounting = Metres(0.05);
    site.fixtures[0].aim.at = SpacePoint{0.05, 0, 0.05};
    const Catalog catalog =
        catalog_of({light_type("spot", FixtureKind::accent, BeamDistribution{Degrees(24)})});
    const double peak = LightDistribution::beam(Degrees(24), Lumens(200)).peak();
    const FallsLight lit = light_of(site, catalog).falls[0];
    CHECK(lit.mean.value() == Approx(peak / 4));
    CHECK(lit.lit_share == 1);
    CHECK_FALSE(lit.through_water);
    site.fixtures[0].at = PlanPoint{0.05, 2};
    CHECK(light_of(site, catalog).falls[0].mean.value() == 0);
}

TEST_CASE("a light in a basin reaches the face refracted through the basin's own surface") {
    // Level 0.4 m, lamp 0.2 m below it and 0.5 m in front of the face: by the flux tube.
    Site site = loss_free_site();
    site.settings.water_attenuation = PerMetre(2);
    site.areas.push_back(area_of("basin", AreaKind::water, -1, -2, 1, 0));
    site.areas[0].level = Metres(0.4);
    site.falls.push_back(falls_of("f", {-0.05, 0}, {0.05, 0}, 0.1, 0.6));
    site.fixtures.push_back(light_at("L", "sub", 0, -0.5));
    site.fixtures[0].mounting = Metres(0.2);
    const Catalog catalog =
        catalog_of({light_type("sub", FixtureKind::submersible, BeamDistribution{Degrees(90)}, 300)});
    const RefractedRay ray = refracted_ray(0.2, 0.25, 0.5);
    const double candela = 300 * 3 / (2 * pi) * std::pow(std::cos(ray.in_water), 2);
    const double expected = candela * ray.horizontal * std::tan(ray.in_air) * std::exp(-2 * ray.path);
    const FallsLight light = light_of(site, catalog).falls[0];
    CHECK(light.mean.value() == Approx(expected));
    CHECK(light.through_water);
    site.settings.light_loss_factor_water =
        0.65; // what a light in water loses; a dry one's factor does not count
    site.settings.light_loss_factor = 0.1;
    CHECK(light_of(site, catalog).falls[0].mean.value() == Approx(0.65 * expected));
    site.fixtures[0].in_water = false; // said to stand dry: straight geometry
    CHECK(light_of(site, catalog).falls[0].mean.value() != Approx(0.1 * expected).epsilon(0.05));
}

TEST_CASE("light-loss factors, filament lamps and LEDs outside their window") {
    Site site;
    site.fixtures.push_back(light_at("L", "lamp", 0, 0));
    site.fixtures[0].mounting = Metres(2);
    FixtureType type = light_type("lamp", FixtureKind::downlight, BeamDistribution{Degrees(90)}, 200);
    const double full = 200 * 3 / (2 * pi) / 4;
    const auto lux = [&](std::optional<double> volts) {
        if (!volts) return lux_at(site, catalog_of({type}), {0, 0, 0});
        const SiteSolution solution = solution_with(Volts(*volts));
        return lux_at(site, catalog_of({type}), {0, 0, 0}, &solution);
    };
    CHECK(lux({}) == Approx(0.8 * full)); // default 0.8, rated volts without a feed
    site.settings.light_loss_factor = 1;
    SECTION("a filament lamp goes with (V / rated)^3.4") {
        // Standard Handbook for Electrical Engineers: exponent 3.4 to 3.5; figures computed with 3.4.
        type.load = LoadModel::filament;
        const double rows[][2] = {{12, 1},       {11.5, 0.865}, {11, 0.744},
                                  {10.8, 0.699}, {10.5, 0.635}, {10, 0.538}};
        for (const auto& row : rows)
            CHECK(lux(row[0]) / full == Approx(row[1]).margin(5e-4));
        type.load = LoadModel::resistance;
        CHECK(lux(11) / full == Approx(0.744).margin(5e-4));
    }
    SECTION("an LED is dark below its window and nominal in it and above") {
        CHECK(lux(8.99) == 0);
        CHECK(lux(9) == Approx(full));
        CHECK(lux(15.5) == Approx(full));
    }
    SECTION("a lamp whose transformer has no operating point is dark") {
        site.fixtures[0].from = "A";
        site.runs.emplace_back().id = "A";
        site.runs[0].from = "T1";
        site.transformers.emplace_back().id = "T1";
        SiteSolution solution;
        solution.cases.resize(3);
        solution.cases[0].unsolved.push_back({});
        CHECK(lux_at(site, catalog_of({type}), {0, 0, 0}, &solution) == 0);
    }
}

TEST_CASE("a tilted discharge lamp loses what its file's tilt table says") {
    Site site = loss_free_site();
    site.fixtures.push_back(light_at("L", "flood", 0, 0));
    site.fixtures[0].mounting = Metres(2);
    site.fixtures[0].aim.tilt = Degrees(0);
    Lm63 file;
    file.tilt = "TILT=INCLUDE\r\n1\r\n2\r\n0 90\r\n1 0.5\r\n";
    file.vertical = {0, 180};
    const Catalog catalog = catalog_of({light_type("flood", FixtureKind::other, FileDistribution{"f.ies"})});
    const auto lux = [&] {
        return compute_light(site, catalog, nullptr, {{"f.ies", file.text()}}, {{0, 0, 0}})
            .value->points[0]
            .horizontal;
    };
    const double plumb = lux().value();
    CHECK(plumb == Approx(25));
    site.fixtures[0].aim.tilt = Degrees(45);
    CHECK(lux().value() == Approx(0.75 * plumb));
}

TEST_CASE("a photometric file that is missing or malformed is an input error with its place") {
    Site site;
    site.fixtures.push_back(light_at("L", "flood", 0, 0));
    FixtureType type = light_type("flood", FixtureKind::other, FileDistribution{"f.ies"}, 1257);
    type.location = {"stock.toml", 12};
    const Catalog catalog = catalog_of({type});
    CHECK(photometric_paths(site, catalog) == std::vector<std::string>{"f.ies"});
    const auto missing = compute_light(site, catalog, nullptr, {});
    REQUIRE_FALSE(missing);
    CHECK(missing.errors[0].location.file == "stock.toml");
    CHECK(missing.errors[0].location.line == 12);
    const auto broken = compute_light(site, catalog, nullptr, {{"f.ies", "TILT=NONE\n1 x"}});
    REQUIRE_FALSE(broken);
    CHECK(broken.errors[0].location.file == "f.ies");
    CHECK(broken.errors[0].location.line == 2);

    Lm63 file;
    file.vertical = {0, 180}; // 400 pi = 1256.6 lm
    CHECK(compute_light(site, catalog, nullptr, {{"f.ies", file.text()}}).value->mismatches.empty());
    file.candela = [](double, double) { return 90.0; };
    const auto differs = compute_light(site, catalog, nullptr, {{"f.ies", file.text()}});
    REQUIRE(differs.value->mismatches.size() == 1);
    CHECK(differs.value->mismatches[0].measured.value() == Approx(360 * pi));
}

TEST_CASE("light for the sky: what goes above level and meets neither falls nor wall") {
    Site site = loss_free_site();
    site.fixtures = {light_at("path", "hat", 0, 0), light_at("up", "spot", 5, 0)};
    const Catalog catalog =
        catalog_of({light_type("hat", FixtureKind::path, HatDistribution{}),
                    light_type("spot", FixtureKind::accent, BeamDistribution{Degrees(36)})});
    CHECK(light_of(site, catalog).fixtures[0].wasted_upward == 0);
    CHECK(light_of(site, catalog).fixtures[1].wasted_upward == Approx(1));
    site.fixtures[1].aim.tilt = Degrees(90); // level: half of it
    CHECK(light_of(site, catalog).fixtures[1].wasted_upward == Approx(0.5).margin(0.02));
    site.areas.push_back(area_of("house", AreaKind::building, 6, -50, 7, 50, 60));
    CHECK(light_of(site, catalog).fixtures[1].wasted_upward == Approx(0).margin(0.01));
    site.areas.clear();
    site.falls.push_back(falls_of("f", {6, 4}, {6, -4}, 3));
    CHECK(light_of(site, catalog).fixtures[1].wasted_upward < 0.05);
}
