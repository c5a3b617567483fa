// From a solved site to the limits it breaks. Currents and volts are worked out by hand from Ohm's law.

#include "rillwatt/limits/breach.hpp"
#include "rillwatt/limits/run_share.hpp"

#include <catch2/catch.hpp>

#include "support/garden.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

/// 0.005 ohm/m a conductor: 10 m are 0.1 ohm out and back.
constexpr double conductor = 0.005;

Garden one_run(double ampacity) {
    Garden garden;
    garden.transformer("T1", 300, 0, {12}).cable("c", conductor).run("A", "T1", 12, "c");
    garden.catalog.cables["c"].ampacity = Amperes(ampacity);
    garden.lamp_type("lamp", {.load = LoadModel::constant_current, .va = 24}); // 2 A
    garden.catalog.fixtures["lamp"].window_low = Volts(9);
    garden.catalog.fixtures["lamp"].window_high = Volts(15);
    return garden;
}

struct Judged {
    Garden garden;
    SiteCircuits circuits;
    SiteSolution solution;
    std::vector<Breach> breaches;

    explicit Judged(Garden made) : garden(std::move(made)) {
        circuits = *garden.build().value;
        solution = solve_site(garden.site, circuits);
        breaches = find_breaches(garden.site, circuits, solution);
    }

    /// "rule part case" of each breach.
    std::vector<std::string> lines() const {
        std::vector<std::string> lines;
        for (const Breach& breach : breaches)
            lines.push_back(std::string(rule_of(breach)) + ' ' +
                            part_of(garden.site, circuits.transformers[breach.transformer], breach).id + ' ' +
                            solution.cases[breach.operating_case].conditions.name);
        return lines;
    }

    /// What a search is told of the first circuit, under its own margins.
    std::optional<Breach> worst(const Margins& margins = {}) const {
        const TransformerCircuit& circuit = circuits.transformers[0];
        return worst_breach(circuit, solve(make_network(circuit, solution.nominal().conditions)), margins);
    }
};

using Lines = std::vector<std::string>;

} // namespace

TEST_CASE("a limit is kept at the limit and broken beyond it") {
    Garden garden = one_run(2);
    garden.fixture("L", "A", 10, "lamp"); // 2 A, 11.8 V
    CHECK(Judged(garden).lines().empty());
    garden.catalog.cables["c"].ampacity = Amperes(1.999);
    CHECK(Judged(garden).lines() == Lines{"cable-overloaded L nominal"});
    garden.catalog.cables["c"].ampacity = Amperes(2);
    garden.catalog.transformers["type of T1"].secondary_limit = Amperes(1.999);
    CHECK(Judged(garden).lines() == Lines{"secondary-overloaded A nominal"});
}

TEST_CASE("each breach has what was found and what is allowed") {
    Garden garden = one_run(1.5);
    garden.fixture("L", "A", 10, "lamp");
    const Judged judged(garden);
    REQUIRE(judged.breaches.size() == 1);
    CHECK(judged.breaches[0].value == Approx(2));
    CHECK(judged.breaches[0].limit == Approx(1.5));
    CHECK(severity_of(judged.breaches[0]) == Severity::error);
}

TEST_CASE("a lamp that leaves its window only on a weak or a strong supply is a warning") {
    Garden garden = one_run(20);
    garden.fixture("L", "A", 10, "lamp"); // 11.8 V, 5 % weak 11.2 V, 5 % strong 12.6 V without load
    FixtureType& lamp = garden.catalog.fixtures["lamp"];
    lamp.window_low = Volts(11.5);
    CHECK(Judged(garden).lines() == Lines{"lamp-undervoltage L weak"});
    CHECK(severity_of(Judged(garden).breaches[0]) == Severity::warning);
    lamp.window_low = Volts(11.9);
    const Judged nominal(garden);
    CHECK(nominal.lines() == Lines{"lamp-undervoltage L nominal", "lamp-undervoltage L weak"});
    CHECK(severity_of(nominal.breaches[0]) == Severity::error);
    CHECK(severity_of(nominal.breaches[1]) == Severity::warning);
    lamp.window_low = Volts(9);
    lamp.window_high = Volts(12.5);
    CHECK(Judged(garden).lines() == Lines{"lamp-overvoltage L strong"});
    CHECK(severity_of(Judged(garden).breaches[0]) == Severity::warning);
}

TEST_CASE("a circuit that stands at nominal supply and not on a weak one is a warning") {
    Garden garden = one_run(20);
    garden.lamp_type("hungry", {.va = 35}); // V^2 / 4R = 36 VA at 12 V behind 1 ohm, 32.5 VA at 11.4 V
    garden.catalog.fixtures["hungry"].window_low = Volts(1);
    garden.catalog.fixtures["hungry"].window_high = Volts(15);
    garden.fixture("L", "A", 100, "hungry");
    const Judged judged(garden);
    CHECK(judged.lines() == Lines{"no-operating-point A weak"});
    CHECK(severity_of(judged.breaches[0]) == Severity::warning);
    CHECK(judged.breaches[0].value == Approx(32.49 / 35).epsilon(1e-6));
}

TEST_CASE("a transformer beyond its margin is a warning, beyond its rating an error") {
    Garden garden = one_run(20);
    garden.fixture("L", "A", 0, "lamp"); // 2 A at 12 V: 24 VA
    garden.catalog.transformers["type of T1"].va = VoltAmperes(24 / 0.81);
    CHECK(Judged(garden).lines() == Lines{"transformer-margin T1 nominal"});
    CHECK(severity_of(Judged(garden).breaches[0]) == Severity::warning);
    garden.catalog.transformers["type of T1"].va = VoltAmperes(24 / 1.01);
    CHECK(Judged(garden).lines() == Lines{"transformer-overloaded T1 nominal"});
    CHECK(severity_of(Judged(garden).breaches[0]) == Severity::error);
    garden.catalog.transformers["type of T1"].va = VoltAmperes(24 / 0.8);
    CHECK(Judged(garden).lines().empty());
}

namespace {

//  14 V run A --1 ohm--+
//  12 V run B --1 ohm--S-- lamp      links A to S and C to S of 1 ohm each; C is a second 14 V run
//  14 V run C --1 ohm--+
Garden driven_backwards() {
    Garden garden;
    garden.transformer("T1", 3000, 0, {12, 14}).cable("c", conductor);
    garden.run("B", "T1", 12, "c").run("A", "T1", 14, "c").run("C", "T1", 14, "c");
    garden.lamp_type("lamp", {.load = LoadModel::constant_current, .va = 1.2}); // 0.1 A
    garden.catalog.fixtures["lamp"].window_low = Volts(9);
    garden.catalog.fixtures["lamp"].window_high = Volts(15);
    garden.fixture("S", "B", 100, "lamp");
    garden.link("AS", "A", "S", 100, "c").link("CS", "C", "S", 100, "c");
    return garden;
}

} // namespace

TEST_CASE("the magnitude of a current counts where joined taps drive it backwards") {
    // Node S between 14, 14 and 12 V through 1 ohm each, 0.1 A drawn: (14 + 14 + 12 - 0.1) / 3 = 13.3 V, so
    // that run B takes 1.3 A in.
    Garden garden = driven_backwards();
    REQUIRE(Judged(garden).solution.nominal().runs[0].amps.value() == Approx(-1.3));
    garden.catalog.transformers["type of T1"].secondary_limit = Amperes(1.2);
    const Judged output(garden);
    CHECK(output.lines() == Lines{"secondary-overloaded B nominal"});
    CHECK(output.breaches[0].value == Approx(1.3));
    REQUIRE(output.worst());
    CHECK(output.worst()->kind == BreachKind::secondary);
    CHECK(output.worst()->run == 0);
    CHECK(output.worst()->value == Approx(1.3));

    const auto shares = run_shares(garden.site, output.circuits, output.solution.nominal());
    CHECK(shares[0].segment == nullptr);
    CHECK(shares[0].standing.share() == Approx(1.3 / 1.2));

    garden.catalog.transformers["type of T1"].secondary_limit = Amperes(25);
    garden.catalog.cables["c"].ampacity = Amperes(1.2);
    CHECK(Judged(garden).lines() == Lines{"cable-overloaded S nominal"});
    CHECK(Judged(garden).worst()->kind == BreachKind::cable);
}

TEST_CASE("a link that carries too much is named itself, not the part it leads to") {
    // The links bring 0.7 A each to S.
    Garden garden = driven_backwards();
    garden.cable("thin", conductor);
    garden.catalog.cables["thin"].ampacity = Amperes(0.6);
    garden.site.links[1].cable = "thin";
    const Judged judged(garden);
    CHECK(judged.lines() == Lines{"cable-overloaded CS nominal"});
    REQUIRE(judged.worst());
    CHECK(part_of(garden.site, judged.circuits.transformers[0], *judged.worst()).id == "CS");
    CHECK(judged.worst()->value == Approx(0.7));
    CHECK(judged.worst()->limit == Approx(0.6));
}

TEST_CASE("a search is told the worst of the first kind that breaks, margins included") {
    Garden garden = one_run(2.5);
    garden.fixture("near", "A", 10, "lamp").fixture("far", "near", 10, "lamp");
    // 4 A to `near`: 11.6 V; 2 A on to `far`: 11.4 V
    const Judged judged(garden);
    REQUIRE(judged.worst());
    CHECK(judged.worst()->kind == BreachKind::cable);
    CHECK(judged.worst()->node == 1);
    CHECK_FALSE(carries_load(
        judged.circuits.transformers[0],
        solve(make_network(judged.circuits.transformers[0], judged.solution.nominal().conditions)), {}));
    const auto low = judged.worst({.low = Volts(2.5), .high = Volts(0)});
    REQUIRE(low);
    CHECK(low->kind == BreachKind::lamp_low);
    CHECK(low->node == 2);
    CHECK(low->value == Approx(11.4));
    CHECK(low->limit == Approx(11.5));
    const auto high = judged.worst({.low = Volts(0), .high = Volts(3.5)});
    REQUIRE(high);
    CHECK(high->kind == BreachKind::lamp_high);
    CHECK(high->node == 1);
}
