// Times proposals for walks of growing length, for a bent walk and for a falls, in milliseconds of processor
// time.
#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/placing/propose_lights.hpp"

#include <fmt/format.h>

#include <ctime>

using namespace rillwatt;

namespace {

Site with_walk(std::vector<PlanPoint> line) {
    Site site;
    Walk walk;
    walk.id = "walk";
    walk.line = std::move(line);
    walk.width = Metres(1.2);
    walk.target = "P4";
    site.walks.push_back(walk);
    return site;
}

Site with_falls() {
    Site site;
    Falls falls;
    falls.id = "falls";
    falls.lip_left = {10, 20};
    falls.lip_right = {13, 20};
    falls.drop = Metres(0.8);
    falls.pool_depth = Metres(0.4);
    site.falls.push_back(falls);
    Area basin;
    basin.id = "basin";
    basin.kind = AreaKind::water;
    basin.outline = {{8, 15}, {15, 15}, {15, 20}, {8, 20}};
    site.areas.push_back(basin);
    return site;
}

double timed(const char* what, const Site& site, const Catalog& catalog, bool cheapest) {
    const std::clock_t start = std::clock();
    const LoadResult<PlacingProposal> proposal =
        propose_lights(site, catalog, nullptr, {}, {.models = {}, .kinds = {}, .cheapest = cheapest});
    const double took = 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    fmt::print("{}, {}: {:.0f} ms, {} lights", what, cheapest ? "cheapest" : "fewest", took,
               proposal.value->lights.size());
    for (const LightNumber& number : proposal.value->numbers)
        fmt::print(", lower bound {} ({:.2f} times)", number.lower_bound,
                   static_cast<double>(number.lights) / static_cast<double>(number.lower_bound));
    fmt::print("\n");
    return took;
}

} // namespace

int main() {
    const Catalog catalog = *read_built_in_catalog().value;
    for (const bool cheapest : {false, true}) {
        timed("falls of 3 m", with_falls(), catalog, cheapest);
        timed("bent walk of 60 m", with_walk({{0, 0}, {15, 3}, {25, -2}, {40, 4}, {58.5, 2}}), catalog,
              cheapest);
    }
    double before = 0;
    for (const double length : {250.0, 500.0, 1000.0, 2000.0, 4000.0}) {
        const std::string what = fmt::format("straight walk of {} ft", length);
        const double took =
            timed(what.c_str(), with_walk({{0, 0}, {length * metres_per_foot, 0}}), catalog, false);
        if (before > 0) fmt::print("  {:.1f} times the one half as long\n", took / before);
        before = took;
    }
    return 0;
}
