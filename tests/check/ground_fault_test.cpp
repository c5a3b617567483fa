#include <catch2/catch.hpp>

#include "check/mains_bench.hpp"

using namespace rillwatt;
using samples::MainsBench;

TEST_CASE("a pump without GFCI is an error by the article for its kind") {
    struct Row {
        bool submersible, hardwired;
        int edition;
        const char* verdict;
        const char* article;
    };
    // NFPA 70 680.51(A), 680.56, and 680.59, which the 2017 edition does not have.
    const auto row =
        GENERATE(Row{true, false, 2017, "error", "680.51(A)"}, Row{true, true, 2020, "error", "680.51(A)"},
                 Row{false, false, 2017, "error", "680.56"}, Row{false, false, 2023, "error", "680.56"},
                 Row{false, true, 2017, "note", "not in NFPA 70 (2017)"},
                 Row{false, true, 2020, "error", "680.59"}, Row{false, true, 2023, "error", "680.59"});
    CAPTURE(row.submersible, row.hardwired, row.edition);
    MainsBench bench;
    bench.site.settings.code_edition = row.edition;
    bench.pump_type().submersible = row.submersible;
    if (row.hardwired) bench.c1().outlet = Outlet::hardwired;
    CHECK(bench.verdict("pump-without-gfci") == "silent");
    bench.c1().gfci = false;
    REQUIRE(bench.verdict("pump-without-gfci") == row.verdict);
    CHECK(bench.findings_of("pump-without-gfci")[0].source.find(row.article) != std::string::npos);
    CHECK(bench.findings_of("pump-without-gfci")[0].part == "P1");
}

TEST_CASE("the 2023 text of Article 680 was not read, and the finding says so") {
    MainsBench bench;
    bench.site.settings.code_edition = 2023;
    bench.c1().gfci = false;
    CHECK(bench.findings_of("pump-without-gfci")[0].source.find("confirm") != std::string::npos);
}

TEST_CASE("a pump on no circuit cannot be judged") {
    MainsBench bench;
    bench.site.pumps[0].circuit.reset();
    CHECK(bench.verdict("pump-without-gfci") == "note");
}

TEST_CASE("outdoor receptacles need GFCI, up to 250 V since 2020") {
    struct Row {
        int edition;
        double volts;
        const char* verdict;
    };
    // NFPA 70 210.8(A): 2017 125 V receptacles; 2020 and 2023 125 to 250 V.
    const auto row = GENERATE(Row{2017, 120, "error"}, Row{2017, 125, "error"}, Row{2017, 240, "note"},
                              Row{2020, 240, "error"}, Row{2023, 120, "error"});
    CAPTURE(row.edition, row.volts);
    MainsBench bench;
    bench.site.settings.code_edition = row.edition;
    bench.c2().volts = Volts(row.volts);
    bench.c2().gfci = false;
    bench.c2().at = MainsBench::at(0, 10); // 40 ft from the pond
    CHECK(bench.verdict("receptacle-without-gfci") == row.verdict);
    bench.c2().outdoors = false;
    CHECK(bench.verdict("receptacle-without-gfci") == "silent");
}

TEST_CASE("within 20 ft of a fountain a receptacle needs GFCI even indoors") {
    struct Row {
        double x_feet;
        const char* verdict;
    };
    // NFPA 70 680.58.
    const auto row = GENERATE(Row{19.9, "silent"}, Row{20, "error"}, Row{20.1, "error"});
    CAPTURE(row.x_feet);
    MainsBench bench;
    bench.c2().outdoors = false;
    bench.c2().gfci = false;
    bench.c2().at = MainsBench::at(row.x_feet, 10);
    CHECK(bench.verdict("receptacle-without-gfci") == row.verdict);
    bench.c2().at.reset();
    CHECK(bench.verdict("receptacle-without-gfci") == "note");
}

TEST_CASE("a pump that shares its GFCI is worth a note, two transformers are not") {
    MainsBench bench;
    bench.site.transformers[0].circuit = "C1";
    CHECK(bench.verdict("shared-gfci") == "note");
    bench.c1().gfci = false;
    CHECK(bench.verdict("shared-gfci") == "silent");
    MainsBench lights;
    lights.site.transformers.push_back(lights.site.transformers[0]);
    lights.site.transformers[1].id = "T2";
    CHECK(lights.verdict("shared-gfci") == "silent");
}

TEST_CASE("leakage on one GFCI is judged at 3 mA") {
    struct Row {
        double each;
        const char* verdict;
    };
    // Common practice, no source.
    const auto row = GENERATE(Row{1.49, "silent"}, Row{1.5, "silent"}, Row{1.51, "warning"});
    CAPTURE(row.each);
    MainsBench bench;
    bench.add_pump("P2", "C1");
    bench.pump_type().leakage_ma = row.each;
    CHECK(bench.verdict("leakage-sum") == row.verdict);
    bench.pump_type().leakage_ma.reset();
    CHECK(bench.verdict("leakage-sum") == "note");
}

TEST_CASE("an outdoor receptacle has an in-use cover, an indoor or hardwired outlet needs none") {
    MainsBench bench;
    bench.c1().wet_cover = false;
    CHECK(bench.verdict("receptacle-cover") == "warning");
    bench.c1().outlet = Outlet::hardwired;
    CHECK(bench.verdict("receptacle-cover") == "silent");
    bench.c1().outlet = Outlet::receptacle;
    bench.c1().outdoors = false;
    CHECK(bench.verdict("receptacle-cover") == "silent");
}

TEST_CASE("a pump belongs on a circuit of its nameplate") {
    struct Row {
        double pump, circuit;
        const char* verdict;
    };
    const auto row = GENERATE(Row{115, 120, "silent"}, Row{115, 110, "silent"}, Row{115, 240, "error"},
                              Row{230, 240, "silent"}, Row{230, 220, "silent"}, Row{230, 120, "error"});
    CAPTURE(row.pump, row.circuit);
    MainsBench bench;
    bench.pump_type().volts = Volts(row.pump);
    bench.c1().volts = Volts(row.circuit);
    CHECK(bench.verdict("pump-voltage-mismatch") == row.verdict);
}

TEST_CASE(
    "where the site works to the international code, one note names the US limits that are not judged") {
    MainsBench bench;
    bench.site.settings.code = CodeFamily::iec;
    REQUIRE(bench.findings_of("breaker-exceeds-conductor").size() == 1);
    CHECK(bench.verdict("breaker-exceeds-conductor") == "note");
    bench.c1().cover = inches(1);
    bench.c1().conductor = "14 AWG";
    bench.pump_type().amps = Amperes(13);
    bench.c2().breaker = Amperes(63);
    bench.light().at = MainsBench::at(39, 10);
    bench.site.pumps[0].at = MainsBench::at(50.5, 10); // 9.5 ft from the nearest edge, 10.5 ft straight
    for (const char* rule :
         {"motor-conductor", "lighting-branch-over-20a", "burial-depth", "cord-in-water", "near-water"}) {
        CAPTURE(rule);
        bench.site.settings.code = CodeFamily::nec;
        CHECK(bench.verdict(rule) != "silent");
        bench.site.settings.code = CodeFamily::iec;
        CHECK(bench.verdict(rule) == "silent");
    }
    bench.c1().gfci = false;
    CHECK(bench.findings_of("pump-without-gfci")[0].message.find("30 mA") != std::string::npos);
}
