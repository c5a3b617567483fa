#include <catch2/catch.hpp>

#include "support/garden.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

Garden small_garden() {
    Garden garden;
    garden.cable("12/2", 0.0065).lamp_type("path", {.va = 2});
    garden.transformer("T1", 300, 0.04, {12, 13}).run("A", "T1", 13, "12/2").splice("H", "A", 10);
    garden.fixture("p1", "H", 5, "path").fixture("p2", "p1", 5, "path");
    return garden;
}

/// What is open, as "part.what(transformer)", and whether the first circuit can be solved.
std::string open_of(const Garden& garden) {
    const auto built = garden.build();
    REQUIRE(built);
    std::string text;
    for (const OpenValue& open : built.value->open)
        text += open.part + "." + open.what + "(" + open.transformer + ") ";
    return text + (built.value->transformers.at(0).complete() ? "complete" : "left out");
}

} // namespace

TEST_CASE("a garden with everything written is complete") { CHECK(open_of(small_garden()) == "complete"); }

TEST_CASE("whatever is left out leaves its transformer out of the numbers") {
    SECTION("model") {
        Garden garden = small_garden();
        garden.site.transformers[0].model.reset();
        CHECK(open_of(garden) == "T1.model(T1) left out");
    }
    SECTION("tap") {
        Garden garden = small_garden();
        garden.site.runs[0].tap.reset();
        CHECK(open_of(garden) == "A.tap(T1) left out");
    }
    SECTION("a run's cable is open once, at the run, however many parts inherit it") {
        Garden garden = small_garden();
        garden.site.runs[0].cable.reset();
        CHECK(open_of(garden) == "A.cable(T1) left out");
    }
    SECTION("length") {
        Garden garden = small_garden();
        garden.site.fixtures[1].length.reset();
        garden.site.splices[0].length.reset();
        CHECK(open_of(garden) == "H.length(T1) p2.length(T1) left out");
    }
    SECTION("a link's cable and length") {
        Garden garden = small_garden();
        garden.link("L", "p2", "A", 9, "");
        garden.site.links[0].length.reset();
        CHECK(open_of(garden) == "L.cable(T1) L.length(T1) left out");
    }
}

TEST_CASE("a run's cable that nobody inherits is not open") {
    Garden garden = small_garden();
    garden.site.runs[0].cable.reset();
    garden.site.splices[0].cable = "12/2";
    CHECK(open_of(garden) == "complete");
    garden.fixture("p3", "A", 1, "path");
    CHECK(open_of(garden) == "A.cable(T1) left out");
}

TEST_CASE("a run that feeds nothing needs no cable, a transformer without runs only its model") {
    Garden garden = small_garden();
    garden.transformer("T2", 100, 0, {12}).transformer("T3", 100, 0, {12}).run("B", "T3", 12, "");
    garden.site.transformers[1].model.reset();
    const auto built = garden.build();
    REQUIRE(built);
    CHECK(open_of(garden) == "T2.model(T2) complete");
    CHECK_FALSE(built.value->transformers.at(1).complete());
    CHECK(built.value->transformers.at(2).complete());
}

TEST_CASE("a light that is not wired yet is open and leaves no transformer out") {
    Garden garden = small_garden();
    garden.fixture("later", "H", 1, "path");
    garden.site.fixtures[2].from.reset();
    CHECK(open_of(garden) == "later.from() complete");
    CHECK(garden.circuit().nodes.size() == 4);
}
