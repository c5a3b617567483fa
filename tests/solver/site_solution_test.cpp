#include <catch2/catch.hpp>

#include "support/garden.hpp"
#include <cmath>

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

//  T1, 300 VA, 4 % regulation, 6 W no load, 115 V primary on a 120 V supply
//   +-- A, 13 V -- f1 -- f2     constant current 2 A each, 0.1 ohm to f1, 0.2 ohm on to f2
//   +-- B, 12 V -- g1           constant current 3 A, 0.1 ohm
Garden two_runs() {
    Garden garden;
    garden.cable("c", 0.05);
    garden.lamp_type("two", {.load = LoadModel::constant_current, .va = 24, .watts = 18});
    garden.lamp_type("three", {.load = LoadModel::constant_current, .va = 36});
    garden.transformer("T1", 300, 0.04, {12, 13});
    auto& type = garden.catalog.transformers.at("type of T1");
    type.no_load = Watts(6);
    type.primary_volts = Volts(115);
    garden.run("A", "T1", 13, "c").run("B", "T1", 12, "c");
    garden.fixture("f1", "A", 1, "two").fixture("f2", "f1", 2, "two").fixture("g1", "B", 1, "three");
    return garden;
}

} // namespace

// By hand: s = 120 / 115, sum(t I) = 13 * 4 + 12 * 3 = 88 VA, s - 0.04 * 88 / 300 = 1.0317449..., so that run
// A starts at 13.412684 V and run B at 12.380939 V.
TEST_CASE("every printed figure of two coupled runs, by hand") {
    const Garden garden = two_runs();
    const CaseResult result = garden.solve().nominal();
    const double factor = 120.0 / 115 - 0.04 * 88 / 300;
    REQUIRE(result.runs.size() == 2);
    CHECK(result.runs[0].volts.value() == Approx(13 * factor));
    CHECK(result.runs[0].amps.value() == Approx(4));
    CHECK(result.runs[0].tap == Volts(13));
    CHECK(result.runs[0].worst_fixture == std::optional<std::size_t>(1));
    CHECK(result.runs[0].worst_volts.value() == Approx(13 * factor - 0.4 - 0.4));
    CHECK(result.runs[1].worst_fixture == std::optional<std::size_t>(2));

    REQUIRE(result.transformers.size() == 1);
    const TransformerResult& transformer = result.transformers[0];
    CHECK(transformer.load.value() == Approx(88 * factor));
    CHECK(transformer.loading == Approx(88 * factor / 300));
    CHECK(transformer.primary_amps.value() == Approx((88 + 6) / 115.0));
    CHECK(transformer.winding_loss.value() == Approx(88 * (0.04 * 88 / 300)));
    CHECK(transformer.no_load == Watts(6));

    const LampResult& far = test::lamp(garden, result, "f2");
    CHECK(far.volts.value() == Approx(13 * factor - 0.8));
    CHECK(far.splice_volts == far.volts);
    CHECK(far.amps.value() == Approx(2));
    CHECK(far.va.value() == Approx(2 * (13 * factor - 0.8)));
    CHECK(far.watts.value() == Approx(1.5 * (13 * factor - 0.8)));
    CHECK(far.drop.value() == Approx(13 - (13 * factor - 0.8)));
    CHECK(far.drop_ratio == Approx((13 - (13 * factor - 0.8)) / 13));

    const SegmentResult& first = test::segment_to(result, "f1");
    CHECK(first.from == "A");
    CHECK(first.cable == "c");
    CHECK(first.length == Metres(1));
    CHECK(first.ohms.value() == Approx(0.1));
    CHECK(first.amps.value() == Approx(4));
    CHECK(first.drop.value() == Approx(0.4));
    CHECK(first.loss.value() == Approx(1.6));
    CHECK(result.cable_loss.value() == Approx(1.6 + 0.8 + 0.9));
}

TEST_CASE("loss counts the fixtures' leads, which are no segments") {
    Garden garden;
    garden.cable("c", 0.05).cable("lead", 0.1);
    garden.lamp_type(
        "l", {.load = LoadModel::constant_current, .va = 24, .lead_metres = 1.5, .lead_cable = "lead"});
    garden.ideal_transformer("T").run("A", "T", 12, "c").fixture("f", "A", 1, "l");
    const CaseResult result = garden.solve().nominal();
    CHECK(result.segments.size() == 1);
    CHECK(result.cable_loss.value() == Approx(4 * 0.1 + 4 * 0.3));
}

TEST_CASE("the weak case has the supply down and the conductor at 75 C or hotter") {
    const struct {
        double site_celsius;
        double weak_celsius;
    } rows[] = {{20, 75}, {75, 75}, {90, 90}};
    for (const auto& row : rows) {
        SiteSettings settings;
        settings.conductor_temperature = Celsius(row.site_celsius);
        settings.supply_band = 0.1;
        const auto cases = operating_cases(settings);
        REQUIRE(cases.size() == 3);
        CHECK(cases[0].name == "nominal");
        CHECK(cases[0].supply_factor == 1);
        CHECK(cases[0].conductor == Celsius(row.site_celsius));
        CHECK(cases[1].name == "weak");
        CHECK(cases[1].supply_factor == Approx(0.9));
        CHECK(cases[1].conductor == Celsius(row.weak_celsius));
        CHECK(cases[1].loaded);
        CHECK(cases[2].name == "strong");
        CHECK(cases[2].supply_factor == Approx(1.1));
        CHECK_FALSE(cases[2].loaded);
    }
}

TEST_CASE("the strong case lists lamps at open-circuit volts and nothing else") {
    const Garden garden = two_runs();
    const CaseResult result = garden.solve().strong();
    REQUIRE(result.lamps.size() == 3);
    CHECK(result.lamps[0].volts.value() == Approx(13 * 1.05 * 120 / 115));
    CHECK(result.lamps[0].splice_volts == result.lamps[0].volts);
    CHECK(result.lamps[2].volts.value() == Approx(12 * 1.05 * 120 / 115));
    CHECK(result.lamps[0].amps == Amperes(0));
    CHECK(result.solved);
    CHECK(result.runs.empty());
    CHECK(result.segments.empty());
    CHECK(result.transformers.empty());
}

TEST_CASE("a circuit without operating point is left out, the other transformers stay") {
    Garden garden = two_runs();
    garden.lamp_type("heavy", {.va = 200});
    garden.transformer("T2", 300, 0, {12}).run("C", "T2", 12, "c");
    garden.fixture("light", "C", 1, "three").fixture("greedy", "C", 10, "heavy");
    const CaseResult result = garden.solve().nominal();
    CHECK_FALSE(result.solved);
    CHECK(result.transformers.size() == 1);
    CHECK(result.lamps.size() == 3);
    REQUIRE(result.unsolved.size() == 1);
    CHECK(garden.site.transformers[result.unsolved[0].transformer].id == "T2");
    CHECK(garden.site.runs[result.unsolved[0].run].id == "C");
    CHECK(garden.site.fixtures[result.unsolved[0].fixture].id == "greedy");
}

TEST_CASE("a tie for what gives way first goes to the first in the file") {
    Garden garden;
    garden.cable("c", 0.5).lamp_type("l", {.va = 60});
    garden.ideal_transformer("T").run("A", "T", 12, "c").run("B", "T", 12, "c");
    garden.fixture("b", "B", 1, "l").fixture("a", "A", 1, "l");
    const CaseResult result = garden.solve().nominal();
    REQUIRE(result.unsolved.size() == 1);
    CHECK(garden.site.fixtures[result.unsolved[0].fixture].id == "b");
    CHECK(garden.site.runs[result.unsolved[0].run].id == "B");
    CHECK(std::abs(result.unsolved[0].carried_share - 36.0 / 60) < 1e-9);
}

TEST_CASE("an incomplete transformer is left out of the numbers without being unsolved") {
    Garden garden = two_runs();
    garden.transformer("T2", 300, 0, {12}).run("C", "T2", 12, "").fixture("open", "C", 1, "three");
    const CaseResult result = garden.solve().nominal();
    CHECK(result.solved);
    CHECK(result.unsolved.empty());
    CHECK(result.lamps.size() == 3);
}

TEST_CASE("a transformer without runs takes its no-load current") {
    Garden garden;
    garden.transformer("T", 300, 0.04, {12});
    garden.catalog.transformers.at("type of T").no_load = Watts(6);
    const CaseResult result = garden.solve().nominal();
    REQUIRE(result.transformers.size() == 1);
    CHECK(result.transformers[0].primary_amps.value() == Approx(0.05));
    CHECK(result.transformers[0].load.value() == 0);
}

TEST_CASE("a lamp below its window is still a constant power") {
    Garden garden;
    garden.cable("c", 0.6).lamp_type("l", {.va = 25});
    garden.catalog.fixtures.at("l").window_low = Volts(10);
    garden.ideal_transformer("T").run("A", "T", 12, "c").fixture("f", "A", 1, "l");
    const LampResult lamp = garden.solve().nominal().lamps.at(0);
    CHECK(lamp.volts < Volts(10));
    CHECK(lamp.va.value() == Approx(25));
}

//  A, 12 V --+
//            |  the link has no resistance, nor has the winding: what flows is without bound
//  B, 13 V --+
TEST_CASE("two taps joined without any resistance have no answer, with lamps and without") {
    Garden garden;
    garden.cable("c", 0.01).lamp_type("l", {.va = 5});
    garden.ideal_transformer("T").run("A", "T", 12, "c").run("B", "T", 13, "c").link("L", "A", "B", 0, "c");
    CHECK_FALSE(garden.solve().nominal().solved);
    CHECK(garden.solve().nominal().unsolved.empty());
    garden.fixture("f", "A", 1, "l");
    const SiteSolution solution = garden.solve();
    REQUIRE(solution.nominal().unsolved.size() == 1);
    CHECK(solution.nominal().unsolved[0].carried_share == 0);
}

TEST_CASE("a link of no length joins two parts of one run without upsetting either") {
    Garden garden;
    garden.cable("c", 0.05).lamp_type("l", {.va = 12});
    garden.ideal_transformer("T").run("A", "T", 12, "c").fixture("f", "A", 1, "l").fixture("g", "A", 1, "l");
    const double apart = garden.solve().nominal().lamps.at(0).volts.value();
    garden.link("L", "f", "g", 0, "c");
    const SiteSolution solution = garden.solve();
    REQUIRE(solution.nominal().solved);
    CHECK(solution.nominal().lamps.at(0).volts.value() == Approx(apart).margin(1e-9));
    CHECK(solution.nominal().lamps.at(1).volts.value() == Approx(apart).margin(1e-9));
}

// The same garden as above: what stands beside a node is what the lists of the case say of its part, and the
// volts between head and lamp follow by the drops, by hand: 4 A through 0.1 ohm, then 2 A through 0.2 ohm.
TEST_CASE("what was solved lies beside the nodes of the circuit") {
    const Garden garden = two_runs();
    const TransformerCircuit circuit = garden.circuit();
    for (const CaseResult& result : garden.solve().cases) {
        REQUIRE(result.circuits.size() == 1);
        const CircuitResult& beside = result.circuits[0];
        REQUIRE(beside.nodes.size() == circuit.nodes.size());
        CHECK((beside.transformer == 0) == result.conditions.loaded);
        for (std::size_t i = 0; i < circuit.nodes.size(); ++i) {
            const NodeResult& node = beside.nodes[i];
            const CircuitNode& part = circuit.nodes[i];
            CHECK((node.lamp >= 0) == (part.kind == NodeKind::fixture));
            CHECK((node.run >= 0) == (part.kind == NodeKind::run && result.conditions.loaded));
            CHECK((node.segment >= 0) == (part.kind != NodeKind::run && result.conditions.loaded));
            if (node.lamp >= 0) {
                const LampResult& lamp = result.lamps[static_cast<std::size_t>(node.lamp)];
                CHECK(lamp.fixture == part.part);
                CHECK(node.volts == std::optional(lamp.splice_volts));
            }
            if (node.run >= 0) CHECK(result.runs[static_cast<std::size_t>(node.run)].run == part.part);
            if (node.segment >= 0)
                CHECK(result.segments[static_cast<std::size_t>(node.segment)].node == static_cast<int>(i));
        }
    }
    const CaseResult nominal = garden.solve().nominal();
    const auto volts_of = [&](const std::string& id) {
        for (std::size_t i = 0; i < circuit.nodes.size(); ++i)
            if (node_id(garden.site, circuit.nodes[i]) == id)
                return nominal.circuits[0].nodes[i].volts.value().value();
        throw std::logic_error("no node " + id);
    };
    CHECK(volts_of("f1") == Approx(volts_of("A") - 0.4));
    CHECK(volts_of("f2") == Approx(volts_of("f1") - 0.4));
}
