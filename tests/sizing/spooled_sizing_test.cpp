#include <catch2/catch.hpp>

#include "bill_cost.hpp"
#include "enumeration.hpp"
#include "random_garden.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

CableType& add_cable(Garden& garden, const std::string& id, double price_per_foot) {
    garden.cable(id, 0.005);
    CableType& type = garden.catalog.cables[id];
    type.section_mm2 = 2;
    type.direct_burial = true;
    type.price = MoneyPerMetre(price_per_foot / feet(1).value());
    return type;
}

/// Three lamps, 30 ft of cable each, on one run.
Garden three_pieces() {
    Garden garden;
    garden.lamp_type("lamp", {.va = 3});
    garden.catalog.fixtures["lamp"].window_low = Volts(9);
    garden.catalog.fixtures["lamp"].window_high = Volts(15);
    TransformerType type;
    type.id = "m";
    type.va = VoltAmperes(100);
    type.regulation = 0.03;
    type.taps = {Volts(12)};
    type.secondary_limit = Amperes(25);
    type.price = Money(92);
    garden.catalog.transformers["m"] = type;
    Transformer transformer;
    transformer.id = "T";
    garden.site.transformers = {transformer};
    Run run;
    run.id = "A";
    run.from = "T";
    garden.site.runs.push_back(run);
    for (const char* id : {"p1", "p2", "p3"})
        garden.fixture(id, "A", feet(30).value(), "lamp");
    return garden;
}

SizeResult sized(const Garden& garden, const SizeOptions& options = {}) {
    const auto result =
        size_site(std::make_shared<const Site>(garden.site), garden.catalog, garden.lengths(), options);
    REQUIRE(result);
    return *result.value;
}

} // namespace

// Joined, 90 ft would take two spools of 50 ft: 92 + 100. Whole pieces take three: 92 + 150. The dearer cable
// by the foot costs 92 + 90 * 1.20.
TEST_CASE("pieces are not joined: what is minimised is what the bill asks for") {
    Garden garden = three_pieces();
    add_cable(garden, "spooled", 1.00).spools = {feet(50)};
    add_cable(garden, "by-the-foot", 1.20);
    const SizeResult result = sized(garden);
    REQUIRE(result.cost);
    CHECK(result.cost->value() == Approx(200).epsilon(1e-9));
    CHECK(result.status == SizeStatus::optimal);
    CHECK(test::billed(garden, *result.sized) == Approx(200).epsilon(1e-9));
}

// 30 ft to each lamp, 45 ft to one of them: no spool holds that, whatever the volts.
TEST_CASE("a piece that no spool holds is named, with the longest spool, and no volts") {
    Garden garden = three_pieces();
    garden.site.settings.units = LengthUnit::feet;
    garden.fixture("far", "A", feet(45).value(), "lamp");
    add_cable(garden, "short", 0.10).spools = {feet(10), feet(25)};
    add_cable(garden, "longer", 1.00).spools = {feet(40)};
    for (const bool per_length : {false, true}) {
        SizeOptions options;
        options.per_length = per_length;
        const SizeResult result = sized(garden, options);
        REQUIRE(result.infeasible);
        CHECK(result.infeasible->part == "far");
        CHECK(result.infeasible->reason == "the piece to far is 45 ft long, the longest spool of any cable "
                                           "is 40 ft, and pieces are not joined");
        CHECK_FALSE(result.infeasible->best);
        CHECK(result.infeasible->suggestion.starts_with(
            "put a splice on the way to far, so that no piece is longer than 40 ft"));
    }
    add_cable(garden, "whole", 1.00).spools = {feet(45)};
    CHECK_FALSE(sized(garden).infeasible);
}

TEST_CASE("a cable whose longest spool is shorter than a piece is not chosen") {
    Garden garden = three_pieces();
    add_cable(garden, "short", 0.10).spools = {feet(10), feet(25)};
    add_cable(garden, "long", 1.00).spools = {feet(100)};
    for (const bool per_length : {false, true}) {
        SizeOptions options;
        options.per_length = per_length;
        const SizeResult result = sized(garden, options);
        REQUIRE(result.cost);
        CHECK(result.cost->value() == Approx(92 + 100).epsilon(1e-9));
        CHECK(result.status == SizeStatus::optimal);
    }
}

TEST_CASE("a typed piece that no spool holds counts at its own length") {
    Garden garden = three_pieces();
    add_cable(garden, "short", 1.00).spools = {feet(25), feet(45)};
    garden.site.fixtures[0].length = feet(60);
    garden.site.runs[0].cable = "short"; // 60 ft, and 30 ft twice on two spools of 45 ft
    const SizeResult result = sized(garden);
    REQUIRE(result.cost);
    CHECK(result.cost->value() == Approx(92 + 60 + 2 * 45).epsilon(1e-9));
    CHECK(test::billed(garden, *result.sized) == Approx(92 + 60 + 2 * 45).epsilon(1e-9));
}

TEST_CASE("pieces of several transformers share spools") {
    Garden garden = three_pieces();
    add_cable(garden, "spooled", 1.00).spools = {feet(60)};
    Transformer second = garden.site.transformers[0];
    second.id = "U";
    garden.site.transformers.push_back(second);
    Run run = garden.site.runs[0];
    run.id = "B";
    run.from = "U";
    garden.site.runs.push_back(run);
    garden.fixture("p4", "B", feet(30).value(), "lamp");
    CHECK(sized(garden).cost->value() == Approx(2 * 92 + 2 * 60).epsilon(1e-9));
}

TEST_CASE("with a cable for each length from spools no length is thicker than what feeds it") {
    SizeOptions options;
    options.per_length = true;
    options.effort = 60'000;
    for (unsigned seed = 1; seed <= 60; ++seed) {
        const Garden garden =
            test::random_garden({.most_runs = 3, .most_lengths = 9, .cables = 4, .spools = true}, seed);
        const SizeResult result = sized(garden, options);
        if (!result.cost) continue;
        CAPTURE(seed);
        CHECK(test::never_thicker_downstream(garden, *result.sized));
        CHECK(test::billed(garden, *result.sized) == Approx(result.cost->value()).epsilon(1e-9));
        CHECK(result.lower_bound->value() <= result.cost->value());
    }
}
