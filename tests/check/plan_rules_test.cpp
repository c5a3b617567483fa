#include <catch2/catch.hpp>

#include "check/mains_bench.hpp"
#include <algorithm>

using namespace rillwatt;
using samples::MainsBench;

namespace {

void add_wall(Site& site, const std::string& id, double left, double bottom, double right, double top) {
    Area wall;
    wall.id = id;
    wall.kind = AreaKind::building;
    wall.outline = {MainsBench::at(left, bottom), MainsBench::at(right, bottom), MainsBench::at(right, top),
                    MainsBench::at(left, top)};
    site.areas.push_back(wall);
}

/// A splice in a walled yard and a link from the light outside to it: neither has a length of its own.
///
///                        +----------------+ 50
///                        | +------------+ |
///                        | |            | |
///                  link  | | S (50,40)  | |
///      light o - - - - - - - o          | |
///    (10,10)             | +------------+ |
///                        +----------------+ 30
///                        40               60
MainsBench walled_yard() {
    MainsBench bench;
    add_wall(bench.site, "south wall", 40, 30, 60, 32);
    add_wall(bench.site, "north wall", 40, 48, 60, 50);
    add_wall(bench.site, "west wall", 40, 32, 42, 48);
    add_wall(bench.site, "east wall", 58, 32, 60, 48);
    Splice splice;
    splice.id = "S";
    splice.from = "A";
    splice.at = MainsBench::at(50, 40);
    bench.site.splices.push_back(splice);
    Link link;
    link.id = "L";
    link.a = "light";
    link.b = "S";
    link.cable = "12/2";
    bench.site.links.push_back(link);
    return bench;
}

std::vector<std::string> parts_of(const std::vector<Finding>& findings) {
    std::vector<std::string> parts;
    for (const Finding& finding : findings)
        parts.push_back(finding.part);
    std::sort(parts.begin(), parts.end());
    return parts;
}

using Parts = std::vector<std::string>;

} // namespace

TEST_CASE("a splice and a link that no trench leads to are told once, as without a way") {
    MainsBench bench = walled_yard();
    CHECK(parts_of(bench.findings_of("no-route")) == Parts{"L", "S"});
    CHECK(bench.findings_of("open-value").empty());
}

TEST_CASE("a splice and a link without a place on the plan are open, not without a way") {
    MainsBench bench = walled_yard();
    bench.site.splices[0].at.reset();
    CHECK(bench.findings_of("no-route").empty());
    CHECK(parts_of(bench.findings_of("open-value")) == Parts{"L", "S"});
}

TEST_CASE("any other open value of a part without a way is still told") {
    MainsBench bench = walled_yard();
    bench.site.links[0].cable.reset();
    REQUIRE(bench.findings_of("open-value").size() == 1);
    CHECK(bench.findings_of("open-value")[0].message.find("`cable` of L") == 0);
}

TEST_CASE("a typed length of a splice and of a link is held against the plan") {
    struct Row {
        double splice_feet, link_feet;
        Parts short_ones;
    };
    // From the transformer at (20, 10) to (50, 50): 30 and 40 ft, a straight line of 50 ft. From the light at
    // (10, 10) to there: 40 and 40 ft, 56.57 ft.
    const auto row = GENERATE(Row{50, 57, {}}, Row{49.9, 57, {"S"}}, Row{50, 56, {"L"}});
    CAPTURE(row.splice_feet, row.link_feet);
    MainsBench bench = walled_yard();
    bench.site.splices[0].at = MainsBench::at(50, 50);
    bench.site.splices[0].length = feet(row.splice_feet);
    bench.site.links[0].length = feet(row.link_feet);
    CHECK(parts_of(bench.findings_of("length-shorter-than-plan")) == row.short_ones);
}
