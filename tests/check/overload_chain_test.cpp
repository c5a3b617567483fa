// Which lengths are named where several in a row carry too much, and how bad what only a weak supply breaks
// is.

#include "rillwatt/check/assessment.hpp"

#include <catch2/catch.hpp>

#include "support/garden.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

/// "severity part" of what one rule says.
std::vector<std::string> told(const Garden& garden, const std::string& rule) {
    const auto result =
        assess(std::make_shared<const Site>(garden.site), std::make_shared<const Catalog>(garden.catalog));
    REQUIRE(result);
    std::vector<std::string> lines;
    for (const Finding& finding : result.value->findings)
        if (finding.rule == rule) lines.push_back(severity_name(finding.severity) + (' ' + finding.part));
    return lines;
}

using Lines = std::vector<std::string>;

/// Lamps of 1 A; `thick` may carry 5 A, `thin` 2 A.
Garden chain() {
    Garden garden;
    garden.transformer("T1", 3000, 0, {12}).cable("thick", 0.001).cable("thin", 0.001);
    garden.catalog.cables["thick"].ampacity = Amperes(5);
    garden.catalog.cables["thin"].ampacity = Amperes(2);
    garden.lamp_type("lamp", {.load = LoadModel::constant_current, .va = 12});
    garden.catalog.fixtures["lamp"].window_low = Volts(9);
    garden.catalog.fixtures["lamp"].window_high = Volts(15);
    garden.run("A", "T1", 12, "thick");
    return garden;
}

} // namespace

TEST_CASE("of overloaded lengths of one cable in a row the first is named, a thinner one behind it as well") {
    Garden garden = chain();
    garden.splice("hub", "A", 1).splice("next", "hub", 1); // 6 A each
    garden.splice("branch", "next", 1, "thin");            // 4 A
    for (const char* id : {"1", "2", "3", "4"})
        garden.fixture(id, "branch", 1, "lamp");
    garden.fixture("5", "next", 1, "lamp").fixture("6", "next", 1, "lamp");
    CHECK(told(garden, "cable-overloaded") == Lines{"error hub", "error branch"});
    garden.splice("end", "branch", 1); // the same thin cable goes on, overloaded as well
    for (std::size_t i = 0; i < 4; ++i)
        garden.site.fixtures[i].from = "end";
    CHECK(told(garden, "cable-overloaded") == Lines{"error hub", "error branch"});
}

TEST_CASE("an overloaded link is named though the lengths that feed its ends say so of theirs") {
    // Two ways to `b`: through `a` and the link, and through its own length; all of the same cable.
    Garden garden = chain();
    garden.splice("a", "A", 1).splice("b", "A", 100);
    for (const char* id : {"1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"})
        garden.fixture(id, "b", 1, "lamp");
    garden.link("ring", "a", "b", 1, "thick");
    const Lines lines = told(garden, "cable-overloaded");
    CHECK(lines == Lines{"error a", "error ring"});
}

TEST_CASE("what breaks only on a weak supply is a warning") {
    Garden garden = chain();
    garden.fixture("lamp", "A", 1, "lamp"); // 12 V, 11.4 V when the supply is 5 % low
    garden.catalog.fixtures["lamp"].window_low = Volts(11.5);
    CHECK(told(garden, "lamp-undervoltage") == Lines{"warning lamp"});
    garden.catalog.fixtures["lamp"].window_low = Volts(12);
    CHECK(told(garden, "lamp-undervoltage") == Lines{"error lamp"});
    garden.lamp_type("hungry", {.va = 35}); // V^2 / 4R behind 1 ohm: 36 VA at 12 V, 32.5 VA at 11.4 V
    garden.catalog.fixtures["hungry"].window_low = Volts(1);
    garden.catalog.fixtures["hungry"].window_high = Volts(15);
    garden.site.fixtures[0].model = "hungry";
    garden.site.fixtures[0].length = Metres(500);
    CHECK(told(garden, "no-operating-point") == Lines{"warning A"});
}
