// Times a proposal for a bent walk of 60 m and for a falls of 3 m, and prints milliseconds of processor time.
#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/placing/propose_lights.hpp"

#include <fmt/format.h>

#include <ctime>

using namespace rillwatt;

int main() {
    Site site;
    Walk walk;
    walk.id = "long walk";
    walk.line = {{0, 0}, {15, 3}, {25, -2}, {40, 4}, {58.5, 2}};
    walk.width = Metres(1.2);
    walk.target = "P4";
    site.walks.push_back(walk);
    Falls falls;
    falls.id = "long falls";
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
    const LoadResult<Catalog> catalog = read_built_in_catalog();
    for (const bool cheapest : {false, true}) {
        const std::clock_t start = std::clock();
        const LoadResult<PlacingProposal> proposal = propose_lights(
            site, *catalog.value, nullptr, {}, {.models = {}, .kinds = {}, .cheapest = cheapest});
        const double took = 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
        fmt::print("place on a bent walk of 60 m and falls of 3 m, {}: {:.0f} ms (target 1000), {} lights, "
                   "{} unmet\n",
                   cheapest ? "cheapest" : "fewest", took, proposal.value->lights.size(),
                   proposal.value->unmet.size());
        for (const std::string& reason : proposal.value->reasons)
            fmt::print("  {}\n", reason);
    }
    return 0;
}
