#include "part_site.hpp"

using namespace rillwatt;

namespace {

// R - H - a - b
//     |
//     c
sizing::PartSite small_part() {
    sizing::PartSite part;
    Run run;
    run.id = "R";
    part.site.runs.push_back(run);
    Splice hub;
    hub.id = "H";
    hub.from = "R";
    part.site.splices.push_back(hub);
    for (const auto& [id, from] : {std::pair("a", "H"), std::pair("b", "a"), std::pair("c", "H")}) {
        Fixture fixture;
        fixture.id = id;
        fixture.from = from;
        fixture.model = std::string(id) == "b" ? "small" : "large";
        part.site.fixtures.push_back(fixture);
    }
    return part;
}

Catalog two_lights() {
    Catalog catalog;
    FixtureType type;
    type.va = VoltAmperes(3);
    catalog.fixtures["small"] = type;
    type.va = VoltAmperes(5);
    catalog.fixtures["large"] = type;
    return catalog;
}

} // namespace

TEST_CASE("the load behind each part is the sum of the lamps that it feeds, its own included") {
    const sizing::Loads loads = small_part().loads(two_lights());
    CHECK(loads == sizing::Loads{{"R", 13}, {"H", 13}, {"a", 8}, {"b", 3}, {"c", 5}});
}

TEST_CASE("a chain of thousands of lamps is split in the middle of its load") {
    sizing::PartSite part = small_part();
    part.site.splices.clear();
    part.site.fixtures.clear();
    constexpr int lamps = 4000; // walked anew for every part this takes minutes
    for (int i = 0; i < lamps; ++i) {
        Fixture fixture;
        fixture.id = "f" + std::to_string(i);
        fixture.from = i == 0 ? "R" : "f" + std::to_string(i - 1);
        fixture.model = "small";
        part.site.fixtures.push_back(fixture);
    }
    part.lengths.fixtures.resize(lamps);
    const std::string added = part.split_run(two_lights(), "R");
    REQUIRE_FALSE(added.empty());
    sizing::Loads loads = part.loads(two_lights());
    CHECK(loads["R"] == 3.0 * lamps / 2);
    CHECK(loads[added] == 3.0 * lamps / 2);
}
