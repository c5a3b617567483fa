#include "rillwatt/text/check_text.hpp"
#include "rillwatt/text/utf8.hpp"

#include <catch2/catch.hpp>

#include "support/sample_assessment.hpp"
#include <sstream>

using namespace rillwatt;
using Catch::Matchers::Contains;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);)
        lines.push_back(line);
    return lines;
}

std::string without_colour(std::string text) {
    for (auto at = text.find('\x1b'); at != std::string::npos; at = text.find('\x1b'))
        text.erase(at, text.find('m', at) - at + 1);
    return text;
}

} // namespace

TEST_CASE("the circuit is drawn as a tree in which only forks are indented") {
    const std::string text = check_text(samples::small_garden(), {});
    CHECK_THAT(text,
               Contains("T1: mag-150, 150 VA, on circuit C2; carries 13.5 VA, 9.0 % of its rating\n"
                        "├─ A                                     12/2      12.90 V  0.66 A  tap 13 V\n"
                        "│  ↓  H1                        40.0 ft  12/2      12.80 V  0.66 A\n"
                        "│  ├─ falls-1                   15.0 ft  12/2      12.75 V  0.33 A  sub-3w\n"
                        "│  └─ falls-2                   18.0 ft  12/2      12.75 V  0.33 A  sub-3w\n"
                        "└─ B                                     12/2      11.95 V  0.42 A  tap 12 V\n"
                        "   ↓  path-1                    15.0 ft  12/2      11.92 V  0.42 A  path-2w\n"
                        "   ↓  path-2                    15.0 ft  12/2      11.90 V  0.21 A  path-2w\n"));
}

TEST_CASE("each lamp shows its volts in three cases, its window and its margin") {
    const std::string text = check_text(samples::small_garden(), {});
    CHECK_THAT(text, Contains("falls-1              A        12.75   12.10   13.65  9 to 15        2.25\n"));
}

TEST_CASE("a lamp outside its window is marked in words, not only in colour") {
    Assessment garden = samples::small_garden();
    garden.solution.cases[0].lamps[0].volts = Volts(8.72);
    garden.solution.cases[2].lamps[1].volts = Volts(15.2);
    const std::string text = check_text(garden, {});
    CHECK_THAT(text,
               Contains("falls-1              A         8.72!  12.10   13.65  9 to 15       -0.28 LOW\n"));
    CHECK_THAT(text, Contains("falls-2              A        12.75   12.10   15.20! 9 to 15        2.25\n"));
    CHECK_THAT(text, Contains("8.72 V  0.33 A  LOW sub-3w\n"));
}

TEST_CASE("a lamp exactly at the end of its window is inside") {
    Assessment garden = samples::small_garden();
    garden.solution.cases[0].lamps[0].volts = Volts(9);
    CHECK_THAT(check_text(garden, {}),
               Contains("falls-1              A         9.00   12.10   13.65  9 to 15"));
}

TEST_CASE("pump circuits stand apart from lighting circuits") {
    const std::string text = check_text(samples::small_garden(), {});
    const auto pumps = text.find("PUMP CIRCUITS");
    const auto lights = text.find("LIGHTING CIRCUITS");
    REQUIRE(pumps != std::string::npos);
    REQUIRE(lights != std::string::npos);
    CHECK(text.find("pump P1", pumps) < lights);
    CHECK(text.find("transformer T1", lights) != std::string::npos);
}

TEST_CASE("findings come last before the cautions, each with its rule, fix and source") {
    const std::string text = check_text(samples::small_garden(), {});
    CHECK_THAT(text, Contains("FINDINGS  1 error, 1 warning, 1 note\n"
                              "site.toml:70: error: falls-1 gets 8.72 V, below its window of 9 to 15 V.\n"
                              "    [lamp-undervoltage]\n"
                              "    fix: Use a thicker cable than 12/2 for A, or tap 14 V.\n"
                              "    source: catalog entry sub-3w\n"));
    CHECK(text.find("FINDINGS") > text.find("RUNNING COST"));
    CHECK(text.find("CAUTIONS") > text.find("FINDINGS"));
    CHECK_THAT(text, Contains("licensed electrician"));
}

TEST_CASE("findings of one rule that follow each other share their mending and source") {
    Finding first;
    first.rule = "low-lamp";
    first.severity = Severity::warning;
    first.message = "a gets little";
    first.hint = "thicker cable";
    first.source = "a book";
    Finding second = first;
    second.message = "b gets little";
    Finding third = first;
    third.message = "c gets little";
    third.hint = "a higher tap";
    CHECK(findings_text({first, second, third}, {}) == "FINDINGS  3 warnings\n"
                                                       "warning: a gets little [low-lamp]\n"
                                                       "warning: b gets little [low-lamp]\n"
                                                       "    fix: thicker cable\n"
                                                       "    source: a book\n"
                                                       "warning: c gets little [low-lamp]\n"
                                                       "    fix: a higher tap\n"
                                                       "    source: a book\n");
}

TEST_CASE("values that sizing fills are told as one finding with the command that fills them") {
    Finding lamp;
    lamp.rule = "lamp";
    lamp.severity = Severity::error;
    lamp.message = "a is dark";
    Finding tap;
    tap.rule = "open-value";
    tap.severity = Severity::error;
    tap.location = {"my garden.toml", 12};
    tap.message = "`tap` of A is open; everything on transformer T is left out of the numbers";
    tap.hint = "filled by rillwatt size";
    Finding length = tap;
    length.message = "`length` of H is open";
    length.hint = "filled by `at` on both ends, or a typed length";
    Finding cable = tap;
    cable.message = "`cable` of A is open; everything on transformer T is left out of the numbers";
    Finding model = tap;
    model.location.line = 20;
    model.message = "`model` of U is open; everything on transformer U is left out of the numbers";
    CHECK(findings_text({lamp, tap, length, cable, model}, {}) ==
          "FINDINGS  5 errors\n"
          "error: a is dark [lamp]\n"
          "my garden.toml: error: 3 values are left open: `rillwatt size 'my garden.toml'\n"
          "    --write` chooses them; until then what hangs on their transformers is left\n"
          "    out of the numbers [open-value]\n"
          "    open: line 12 `tap` of A, `cable` of A, line 20 `model` of U\n"
          "my garden.toml:12: error: `length` of H is open [open-value]\n"
          "    fix: filled by `at` on both ends, or a typed length\n");
    CHECK_THAT(findings_text({tap}, {}), Contains("1 value is left open"));
}

TEST_CASE("a garden without findings says so") {
    CHECK(findings_count_text({}) == "no findings");
    CHECK(findings_count_text({{}, {}}) == "2 notes");
}

TEST_CASE("a circuit without operating point says how much it carries and where it gives way") {
    const std::string text = check_text(samples::unsolved_garden(), {});
    CHECK_THAT(text,
               Contains("no operating point: carries at most 73 % of its load; falls-2 on A gives way"));
}

TEST_CASE("no line is wider than eighty columns and none carries a control character") {
    for (const Assessment& garden :
         {samples::small_garden(), samples::hostile_garden(), samples::unsolved_garden()})
        for (const std::string& line : lines_of(check_text(garden, {}))) {
            CAPTURE(line);
            CHECK(display_width(line) <= 80);
            for (char character : line)
                CHECK(static_cast<unsigned char>(character) >= 0x20);
        }
}

TEST_CASE("colour changes nothing but colour") {
    const Assessment garden = samples::small_garden();
    const std::string coloured = check_text(garden, {.colour = true, .width = 80});
    CHECK_THAT(coloured, Contains("\x1b[1;31merror:\x1b[0m"));
    CHECK(without_colour(coloured) == check_text(garden, {}));
}

TEST_CASE("a site in metres is printed in metres") {
    Assessment garden = samples::small_garden();
    Site site = *garden.site;
    site.settings.units = LengthUnit::metres;
    garden.site = std::make_shared<const Site>(site);
    CHECK_THAT(check_text(garden, {}), Contains("↓  H1                         12.2 m  12/2"));
}

TEST_CASE("a chain of a thousand splices, each with a lamp, stays readable and is drawn at once") {
    Assessment garden = samples::small_garden();
    TransformerCircuit& circuit = garden.circuits.transformers[0];
    const CircuitNode splice = circuit.nodes[1];
    const CircuitNode lamp = circuit.nodes[2];
    int hub = 1;
    for (int i = 0; i < 1000; ++i) {
        circuit.nodes.push_back(lamp);
        circuit.nodes.back().parent = hub;
        circuit.nodes.push_back(splice);
        circuit.nodes.back().parent = hub;
        hub = static_cast<int>(circuit.nodes.size()) - 1;
    }
    for (CaseResult& result : garden.solution.cases)
        result.circuits[0].nodes.resize(circuit.nodes.size());
    for (const std::string& line : lines_of(check_text(garden, {})))
        CHECK(display_width(line) <= 80);
}
