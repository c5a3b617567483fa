#include <catch2/catch.hpp>

#include "support/garden.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

//   T1 --A--+-- H1 --+-- falls-1 --- falls-2
//           |        +-- falls-3
//           +-- path-1
Garden hub_garden() {
    Garden garden;
    garden.cable("12/2", 0.0065).cable("10/2", 0.0041).cable("18/2", 0.026);
    garden.lamp_type("sub", {.va = 4, .lead_metres = 6, .lead_cable = "18/2"}).lamp_type("path", {.va = 2});
    garden.transformer("T1", 300, 0.04, {12, 13, 14});
    garden.run("A", "T1", 13, "12/2");
    garden.splice("H1", "A", 10, "10/2");
    garden.fixture("falls-1", "H1", 3, "sub").fixture("falls-2", "falls-1", 2, "sub", "12/2");
    garden.fixture("falls-3", "H1", 4, "sub").fixture("path-1", "A", 5, "path");
    return garden;
}

const CircuitNode& node_of(const Garden& garden, const TransformerCircuit& circuit, const std::string& id) {
    for (const CircuitNode& node : circuit.nodes)
        if (node_id(garden.site, node) == id) return node;
    FAIL("no node " << id);
    return circuit.nodes.front();
}

/// All messages of a build that fails, in one text.
std::string messages(const Garden& garden) {
    const auto built = garden.build();
    CHECK_FALSE(built);
    std::string text;
    for (const InputError& error : built.errors)
        text += std::to_string(error.location.line) + ": " + error.found + "; " + error.expected + "\n";
    return text;
}

} // namespace

TEST_CASE("every node comes after the node that feeds it") {
    const TransformerCircuit circuit = hub_garden().circuit();
    REQUIRE(circuit.nodes.size() == 6);
    REQUIRE(circuit.complete());
    for (std::size_t i = 0; i < circuit.nodes.size(); ++i)
        CHECK(circuit.nodes[i].parent < static_cast<int>(i));
    CHECK(circuit.nodes.at(0).kind == NodeKind::run);
    CHECK(circuit.runs.at(0).node == 0);
}

TEST_CASE("a cable is inherited downstream until a part names its own") {
    const Garden garden = hub_garden();
    const TransformerCircuit circuit = garden.circuit();
    const struct {
        const char* part;
        const char* cable;
        bool own;
    } rows[] = {{"A", "12/2", true},       {"H1", "10/2", true},       {"falls-1", "10/2", false},
                {"falls-2", "12/2", true}, {"falls-3", "10/2", false}, {"path-1", "12/2", false}};
    for (const auto& row : rows) {
        CAPTURE(row.part);
        const CircuitNode& node = node_of(garden, circuit, row.part);
        CHECK(node.cable->id == row.cable);
        CHECK(node.own_cable == row.own);
    }
    CHECK(node_of(garden, circuit, "falls-1").lead_cable->id == "18/2");
    CHECK(node_of(garden, circuit, "path-1").lead_cable == nullptr);
}

TEST_CASE("a transformer takes the volts of its circuit, else those of the site") {
    Garden garden = hub_garden();
    garden.site.settings.supply_voltage = Volts(120);
    CHECK(garden.circuit().supply == Volts(120));
    BranchCircuit branch;
    branch.id = "C1";
    garden.site.circuits.push_back(branch);
    garden.site.transformers[0].circuit = "C1";
    CHECK(garden.circuit().supply == Volts(120));
    garden.site.circuits[0].volts = Volts(115);
    CHECK(garden.circuit().supply == Volts(115));
}

TEST_CASE("parts that feed each other are named with their lines") {
    Garden garden = hub_garden();
    garden.splice("X", "Z", 1)
        .splice("Y", "X", 1)
        .fixture("Z", "Y", 1, "path")
        .fixture("tail", "Z", 1, "path");
    const std::string text = messages(garden);
    CHECK(text == "8: parts that feed each other: \"X\" (line 8) feeds \"Y\" (line 9) feeds \"Z\" (line 10) "
                  "feeds \"X\"; every part to be reached from a run by following `from`\n");
}

TEST_CASE("a part that feeds itself is a loop of one, and two loops are two errors") {
    Garden garden = hub_garden();
    garden.splice("S", "S", 1).splice("P", "Q", 1).splice("Q", "P", 1);
    const auto built = garden.build();
    REQUIRE(built.errors.size() == 2);
    CHECK(built.errors[0].found == "\"S\" (line 8) feeds itself");
    CHECK(built.errors[1].found ==
          "parts that feed each other: \"P\" (line 9) feeds \"Q\" (line 10) feeds \"P\"");
}

TEST_CASE("a feed of the wrong kind is an error that says what could feed the part") {
    Garden garden = hub_garden();
    garden.fixture("F", "T1", 1, "path").run("B", "H1", 12, "12/2").fixture("G", "H11", 1, "path");
    const std::string text = messages(garden);
    CHECK_THAT(text,
               Catch::Contains("fixture \"F\" is fed from transformer \"T1\"; the id of a run, a splice or "
                               "a fixture; a [[run]] is what starts at a transformer"));
    CHECK_THAT(text, Catch::Contains("run \"B\" is fed from splice \"H1\"; the id of a transformer"));
    CHECK_THAT(text, Catch::Contains("names nothing that could feed it"));
    CHECK_THAT(text, Catch::Contains("nearest is \"H1\""));
}

TEST_CASE("a tap the transformer does not have lists those it has") {
    Garden garden = hub_garden();
    garden.site.runs[0].tap = Volts(16);
    CHECK(messages(garden) ==
          "2: `tap` of run \"A\" is 16, and transformer \"T1\" (type of T1) has no such tap; one of its "
          "taps: 12, 13, 14\n");
    CHECK(garden.build().errors.at(0).key == "tap");
    garden.site.runs[0].tap = Volts(14);
    CHECK(garden.build());
}

TEST_CASE("what is wrong between parts is told apart from names, which reading a site looks up") {
    Garden garden = hub_garden();
    garden.site.runs[0].tap = Volts(16);
    garden.site.fixtures[0].model = "subb";
    garden.splice("S", "S", 1).splice("N", "nowhere", 1);
    CHECK(garden.build().errors.size() == 4);
    const std::vector<InputError> errors = wiring_errors(garden.site, garden.catalog);
    REQUIRE(errors.size() == 2);
    CHECK(errors[0].found == "\"S\" (line 8) feeds itself");
    CHECK(errors[0].key == "from");
    CHECK(errors[1].key == "tap");
    garden.catalog.transformers["type of T1"].taps.clear(); // stands for an entry that could not be read
    CHECK(wiring_errors(garden.site, garden.catalog).size() == 1);
}

TEST_CASE("names that no catalog has are errors with the nearest entry") {
    Garden garden = hub_garden();
    garden.site.runs[0].cable = "12-2";
    garden.site.fixtures[0].model = "subb";
    garden.site.transformers[0].model = "none such";
    const std::string text = messages(garden);
    CHECK_THAT(text, Catch::Contains("cable \"12-2\" of \"A\" is in no catalog"));
    CHECK_THAT(text, Catch::Contains("nearest is \"12/2\""));
    CHECK_THAT(text, Catch::Contains("nearest is \"sub\""));
    CHECK_THAT(text, Catch::Contains("1: model \"none such\" of \"T1\" is in no catalog"));
}

TEST_CASE("a link joins two different parts of one transformer") {
    Garden garden = hub_garden();
    garden.transformer("T2", 100, 0, {12}).run("B", "T2", 12, "12/2").fixture("far", "B", 5, "path");
    garden.link("good", "falls-3", "path-1", 7, "12/2");
    REQUIRE(garden.build());
    CHECK(garden.circuit().links.size() == 1);
    garden.link("across", "falls-3", "far", 7, "12/2").link("self", "H1", "H1", 7, "12/2");
    garden.link("nowhere", "H1", "T1", 7, "12/2");
    const std::string text = messages(garden);
    CHECK_THAT(text, Catch::Contains("on transformer \"T1\" and \"far\" on transformer \"T2\""));
    CHECK_THAT(text, Catch::Contains("link \"self\" joins \"H1\" to itself"));
    CHECK_THAT(text, Catch::Contains("link \"nowhere\" ends at \"T1\", which is no part of a circuit"));
}

TEST_CASE("ten thousand lamps in one chain are built in one pass") {
    Garden garden;
    garden.cable("c", 1e-6).lamp_type("l", {.va = 1}).ideal_transformer("T").run("A", "T", 12, "c");
    for (int i = 0; i < 10000; ++i)
        garden.fixture("f" + std::to_string(i), i == 0 ? "A" : "f" + std::to_string(i - 1), 1, "l");
    CHECK(garden.circuit().nodes.size() == 10001);
}
