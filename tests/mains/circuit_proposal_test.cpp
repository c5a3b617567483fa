#include "rillwatt/mains/circuit_proposal.hpp"

#include <catch2/catch.hpp>

#include "mains/mains_garden.hpp"
#include <algorithm>

using namespace rillwatt;
using samples::MainsGarden;

namespace {

CircuitProposal propose(const MainsGarden& garden) { return propose_circuits(garden.site, garden.summary()); }

/// Two pumps and a transformer that name no circuit.
MainsGarden unassigned_garden() {
    MainsGarden garden;
    garden.pump("falls", "", 115, 8, 700).leakage_ma = 0.5;
    garden.pump("skimmer", "", 115, 1, 80).leakage_ma = 0.2;
    garden.transformer("T1", "", 2.0);
    for (auto& pump : garden.site.pumps)
        pump.circuit.reset();
    garden.site.transformers[0].circuit.reset();
    return garden;
}

} // namespace

TEST_CASE("loads without a circuit get new ones, pumps apart from lights, few and protected") {
    const auto proposal = propose(unassigned_garden());
    REQUIRE(proposal.circuits.size() == 2);
    const auto& pumps = proposal.circuits[0];
    CHECK(pumps.id == "pumps-1");
    CHECK_FALSE(pumps.circuit);
    CHECK(pumps.figures.loads == std::vector<std::string>{"falls", "skimmer"});
    CHECK(pumps.gfci_chosen);
    // 125 % of 9 A = 11.25 A: 15 A and 14 AWG (240.4(D)), 14 AWG for ground (Table 250.122).
    CHECK(pumps.breaker.value == Amperes(15));
    CHECK(pumps.conductor.value == std::string("14 AWG"));
    CHECK(pumps.grounding == "14 AWG");
    CHECK(proposal.circuits[1].id == "lights-1");
    CHECK(proposal.circuits[1].figures.loads == std::vector<std::string>{"T1"});
}

TEST_CASE("pumps that would overload a circuit or trip its GFCI together are spread over several") {
    auto heavy = unassigned_garden();
    heavy.catalog.pumps["model of skimmer"].amps = Amperes(9); // 1.25 * 17 A is more than 20 A
    CHECK(propose(heavy).circuits.size() == 3);
    auto leaky = unassigned_garden();
    leaky.catalog.pumps["model of skimmer"].leakage_ma = 2.6; // 3.1 mA together
    CHECK(propose(leaky).circuits.size() == 3);
    leaky.catalog.pumps["model of skimmer"].leakage_ma = 2.5;
    CHECK(propose(leaky).circuits.size() == 2);
}

TEST_CASE("a new id never collides with one that is written") {
    auto garden = unassigned_garden();
    garden.circuit("pumps-1");
    Area area;
    area.id = "lights-1";
    garden.site.areas.push_back(area);
    const auto proposal = propose(garden);
    CHECK(proposal.circuits[1].id == "pumps-2");
    CHECK(proposal.circuits[2].id == "lights-2");
}

TEST_CASE("an open conductor is the thinnest that keeps the drop within 3 %") {
    struct Row {
        double length_feet;
        const char* conductor;
        const char* grounding;
    };
    // 12 A resistive at 120 V, Table 9: 3.6 V at L = 3.6 / (2 * 12 * R) kft: 14 AWG (3.1) 48.4 ft, 12 AWG
    // (2.0) 75 ft, 10 AWG (1.2) 125 ft. Ground by 250.122(B) in proportion of circular mils.
    const auto row =
        GENERATE(Row{48, "14 AWG", "14 AWG"}, Row{49, "12 AWG", "12 AWG"}, Row{75, "12 AWG", "12 AWG"},
                 Row{75.1, "10 AWG", "10 AWG"}, Row{125, "10 AWG", "10 AWG"}, Row{126, "8 AWG", "8 AWG"});
    CAPTURE(row.length_feet);
    MainsGarden garden;
    auto& circuit = garden.circuit("C1");
    circuit.length = feet(row.length_feet);
    garden.pump("P1", "C1", 120, 12, 1440);
    const auto proposal = propose(garden);
    const auto& proposed = proposal.circuits[0];
    CHECK(proposed.conductor.value == std::string(row.conductor));
    CHECK(proposed.conductor.chosen);
    CHECK(proposed.grounding == row.grounding);
    CHECK(proposed.figures.drop_ratio <= 0.03 + 1e-9);
}

TEST_CASE("while the length is open the proposal says how far each size carries") {
    MainsGarden garden;
    garden.circuit("C1");
    garden.pump("P1", "C1", 120, 12, 1440);
    const auto proposal = propose(garden);
    const auto& longest = proposal.circuits[0].longest;
    REQUIRE(longest.size() == 6);
    CHECK(longest[0].conductor == "14 AWG");
    CHECK(longest[0].length / feet(1) == Approx(48.387).epsilon(1e-4));
    CHECK(longest[1].length / feet(1) == Approx(75));
    CHECK(longest[2].length / feet(1) == Approx(125));
}

TEST_CASE("what is written stays as written") {
    MainsGarden garden;
    auto& circuit = garden.circuit("C1");
    circuit.breaker = Amperes(20);
    circuit.conductor = "10 AWG";
    circuit.wiring = Wiring::rigid_metal;
    circuit.cover = inches(8);
    circuit.gfci = true;
    garden.pump("P1", "C1", 120, 4, 400);
    const auto proposal = propose(garden);
    const auto& proposed = proposal.circuits[0];
    CHECK_FALSE(proposed.breaker.chosen);
    CHECK_FALSE(proposed.conductor.chosen);
    CHECK_FALSE(proposed.wiring.chosen);
    CHECK_FALSE(proposed.cover.chosen);
    CHECK_FALSE(proposed.gfci_chosen);
    CHECK(proposed.why.empty());
    CHECK(proposal_toml(proposal).empty());
}

TEST_CASE("open wiring is direct burial under lawn and conduit under what nobody breaks open again") {
    struct Row {
        Crossing crossing;
        Wiring wiring;
        double cover_inches;
    };
    // NFPA 70 (2017) Table 300.5 columns 1 and 3; a home's driveway.
    const auto row = GENERATE(Row{Crossing::lawn, Wiring::direct_burial, 24},
                              Row{Crossing::slab, Wiring::pvc, 4}, Row{Crossing::driveway, Wiring::pvc, 18});
    MainsGarden garden;
    garden.circuit("C1").crosses = row.crossing;
    garden.pump("P1", "C1", 120, 4, 400);
    const auto proposal = propose(garden);
    CHECK(proposal.circuits[0].wiring.value == row.wiring);
    CHECK(*proposal.circuits[0].cover.value / inches(1) == Approx(row.cover_inches));
    REQUIRE(proposal.burial.size() == 3);
}

TEST_CASE("a cord-and-plug pump gets the breaker of which it takes 80 %") {
    struct Row {
        double amps, breaker;
    };
    // NFPA 70 210.23(A)(1): 12 A of 15 A.
    const auto row = GENERATE(Row{12, 15}, Row{12.1, 20}, Row{16, 20}, Row{16.1, 25});
    MainsGarden garden;
    garden.circuit("C1");
    garden.pump("P1", "C1", 120, row.amps, 100);
    garden.site.pumps[0].hours_per_day = Hours(1);
    CHECK(propose(garden).circuits[0].breaker.value == Amperes(row.breaker));
}

TEST_CASE("what no choice can fix is said, not hidden") {
    MainsGarden garden;
    garden.circuit("far").length = feet(900);
    garden.circuit("thin").conductor = "14 AWG";
    garden.circuit("lights");
    garden.pump("P1", "far", 120, 15, 1800);
    garden.pump("P2", "thin", 120, 15, 1800);
    garden.transformer("T1", "lights", 18.0);
    const auto proposal = propose(garden);
    CHECK(proposal.circuits[0].cannot.size() == 1); // drop
    CHECK(proposal.circuits[1].cannot.size() == 1); // 14 AWG under a 20 A breaker
    CHECK(proposal.circuits[2].cannot.size() == 1); // lighting above 20 A
}

TEST_CASE("pumps and lights on one circuit are advised apart, the file is left alone") {
    MainsGarden garden;
    garden.circuit("C1");
    garden.pump("P1", "C1", 120, 4, 400);
    garden.transformer("T1", "C1", 1.0);
    const auto proposal = propose(garden);
    CHECK(proposal.circuits.size() == 1);
    REQUIRE(proposal.advice.size() == 1);
    CHECK(proposal.advice[0].find("P1") != std::string::npos);
}

TEST_CASE("the text to paste names new circuits and escapes what users write") {
    auto garden = unassigned_garden();
    const std::string toml = proposal_toml(propose(garden));
    CHECK(toml.find("[[circuit]]\nid = \"pumps-1\"\nvolts = 120\nbreaker = 15\ngfci = true\n") == 0);
    CHECK(toml.find("# to [[pump]] skimmer:\ncircuit = \"pumps-1\"\n") != std::string::npos);
    CHECK(toml.find("cover = \"24 in\"") != std::string::npos);
    garden.site.pumps[1].id = "line\nbreak = \"x\"";
    CHECK(proposal_toml(propose(garden)).find("\nbreak = ") == std::string::npos);
}

TEST_CASE("where the international code applies sizes and depths stay open, circuits are still spread") {
    auto garden = unassigned_garden();
    garden.site.settings.code = CodeFamily::iec;
    const auto proposal = propose(garden);
    REQUIRE(proposal.circuits.size() == 2);
    CHECK_FALSE(proposal.circuits[0].breaker.value);
    CHECK_FALSE(proposal.circuits[0].conductor.value);
    CHECK_FALSE(proposal.circuits[0].cover.value);
    CHECK(proposal.circuits[0].gfci_chosen);
    CHECK(proposal.circuits[0].why.back().find("30 mA") != std::string::npos);
    CHECK(proposal.burial.empty());
}
