// Times the light of a garden of 60 lights, 10,000 grid points and 20 walls, and of drawn gardens as they
// grow.
#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/light/compute_light.hpp"
#include "rillwatt/site/read_site.hpp"

#include <fmt/format.h>

#include "support/placed_garden.hpp"
#include <algorithm>
#include <ctime>

using namespace rillwatt;

namespace {

FixtureType type_of(const char* id, FixtureKind kind, DistributionSpec distribution) {
    FixtureType type;
    type.id = id;
    type.kind = kind;
    type.lumens = Lumens(200);
    type.distribution = std::move(distribution);
    return type;
}

Site garden() {
    Site site;
    for (int i = 0; i < 60; ++i) {
        Fixture fixture;
        fixture.id = fmt::format("L{}", i);
        fixture.model = i % 3 == 0 ? "hat" : i % 3 == 1 ? "beam" : "sunk";
        fixture.at = PlanPoint{(i % 10) * 3.0, (i / 10) * 4.0 + 0.9};
        site.fixtures.push_back(fixture);
    }
    for (int i = 0; i < 5; ++i) { // 5 sheds of 4 walls
        Area shed;
        shed.kind = AreaKind::building;
        shed.height = Metres(2.5);
        const double x = 3 + 5.3 * i;
        const double y = 2 + 3.7 * i;
        shed.outline = {{x, y}, {x + 2, y}, {x + 2, y + 2}, {x, y + 2}};
        site.areas.push_back(shed);
    }
    Area pond;
    pond.kind = AreaKind::water;
    pond.outline = {{-1, 10}, {12, 10}, {12, 16}, {-1, 16}};
    site.areas.push_back(pond);
    for (int i = 0; i < 8; ++i) { // 8 walks of 120 x 10 cells: 9,600, and two faces of 20 x 10
        Walk walk;
        walk.line = {{0, i * 3.0}, {30, i * 3.0}};
        walk.width = Metres(2.5);
        site.walks.push_back(walk);
    }
    for (int i = 0; i < 2; ++i) {
        Falls falls;
        falls.lip_left = {2.0 + 5 * i, 15.9};
        falls.lip_right = {4.0 + 5 * i, 15.9};
        falls.drop = Metres(1);
        site.falls.push_back(falls);
    }
    for (int i = 0; i < 3; ++i) {
        Viewpoint viewpoint;
        viewpoint.at = {10.0 * i, -5};
        viewpoint.eye = Metres(1.6);
        site.viewpoints.push_back(viewpoint);
    }
    return site;
}

/// Drawn gardens with the built-in catalog: whole results, and what a light costs.
void print_plots() {
    const Catalog catalog = *read_built_in_catalog().value;
    fmt::print("\nlight of plots on paved streets\n{:>10} {:>12} {:>14}\n", "lights", "seconds",
               "us a light");
    for (const int lights : {250, 1000, 4000, 10000}) {
        const Site site = *read_site(test::placed_garden({.lights = lights}), "plots.toml").value;
        const std::clock_t start = std::clock();
        compute_light(site, catalog, nullptr, {});
        const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
        fmt::print("{:>10} {:>12.3f} {:>14.1f}\n", lights, seconds, 1e6 * seconds / lights);
    }
}

} // namespace

int main() {
    const Site site = garden();
    Catalog catalog;
    catalog.fixtures["hat"] = type_of("hat", FixtureKind::path, HatDistribution{});
    catalog.fixtures["beam"] = type_of("beam", FixtureKind::downlight, BeamDistribution{Degrees(60)});
    catalog.fixtures["sunk"] = type_of("sunk", FixtureKind::submersible, BeamDistribution{Degrees(60)});
    double best = 1e9;
    double lux = 0;
    for (int i = 0; i < 10; ++i) {
        const std::clock_t start = std::clock(); // processor time: other work on the machine does not count
        const LoadResult<LightResult> result = compute_light(site, catalog, nullptr, {});
        best = std::min(best, 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
        lux += result.value->walks[0].mean.value();
    }
    fmt::print("light of 60 lights, 10,000 points, 20 walls: {:.1f} ms (target 50), mean {:.3f} lx\n", best,
               lux / 10);
    print_plots();
    return 0;
}
