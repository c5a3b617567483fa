#include <catch2/catch.hpp>

#include "check/mains_bench.hpp"

using namespace rillwatt;
using samples::MainsBench;

// Each limit just inside, at it and just outside; the source of the limit stands beside it.

TEST_CASE("the bench garden breaks no rule of the line-voltage side") {
    const MainsBench bench;
    for (const char* rule :
         {"pump-without-gfci", "receptacle-without-gfci", "receptacle-cover", "receptacle-near-water",
          "circuit-overloaded", "breaker-exceeds-conductor", "motor-conductor", "lighting-branch-over-20a",
          "branch-drop", "burial-depth", "cord-in-water", "cord-too-short", "shared-gfci", "leakage-sum",
          "pump-voltage-mismatch", "fixture-not-submersible", "wet-contact-voltage",
          "supply-not-listed-for-water", "near-water"}) {
        CAPTURE(rule);
        CHECK(bench.verdict(rule) == "silent");
    }
}

TEST_CASE("125 % of a continuous load fills a breaker exactly") {
    struct Row {
        double amps;
        const char* verdict;
    };
    // NFPA 70 (2017, 2020) 210.20(A): 16 A * 1.25 = 20 A.
    const auto row = GENERATE(Row{15.99, "silent"}, Row{16, "silent"}, Row{16.01, "error"});
    CAPTURE(row.amps);
    MainsBench bench;
    bench.pump_type().amps = Amperes(row.amps);
    CHECK(bench.verdict("circuit-overloaded") == row.verdict);
}

TEST_CASE("one cord-and-plug pump takes at most 80 % of its breaker") {
    struct Row {
        double amps;
        const char* verdict;
    };
    // NFPA 70 210.23(A)(1): 12 A of 15 A. Run an hour a day, 125 % of the motor is the same limit; two pumps
    // show it apart from the design current.
    const auto row = GENERATE(Row{11.9, "silent"}, Row{12, "silent"}, Row{12.1, "error"});
    CAPTURE(row.amps);
    MainsBench bench;
    bench.c1().breaker = Amperes(15);
    bench.pump_type().amps = Amperes(row.amps);
    bench.site.pumps[0].hours_per_day = Hours(1);
    CHECK(bench.verdict("circuit-overloaded") == row.verdict);
}

TEST_CASE("a hardwired pump takes at most half of a breaker that others share") {
    struct Row {
        double amps;
        const char* verdict;
    };
    // NFPA 70 210.23(A)(2): 10 A of 20 A.
    const auto row = GENERATE(Row{9.9, "silent"}, Row{10, "silent"}, Row{10.1, "error"});
    CAPTURE(row.amps);
    MainsBench bench;
    bench.c1().outlet = Outlet::hardwired;
    bench.pump_type().amps = Amperes(row.amps);
    CHECK(bench.verdict("circuit-overloaded") == "silent"); // alone on its circuit
    bench.site.transformers[0].circuit = "C1";
    CHECK(bench.verdict("circuit-overloaded") == row.verdict);
}

TEST_CASE("a wire weaker than its next-size-up breaker limits the load") {
    struct Row {
        double amps;
        const char* verdict;
    };
    // Table 310.16 at 60 C: 6 AWG 55 A, with a 60 A breaker by 240.4(B); 44 A * 1.25 = 55 A.
    const auto row = GENERATE(Row{43.9, "silent"}, Row{44, "silent"}, Row{44.1, "error"});
    CAPTURE(row.amps);
    MainsBench bench;
    bench.c1().breaker = Amperes(60);
    bench.c1().conductor = "6 AWG";
    bench.pump_type().amps = Amperes(row.amps);
    CHECK(bench.verdict("circuit-overloaded") == row.verdict);
}

TEST_CASE("a breaker fits its conductor") {
    struct Row {
        const char* conductor;
        double breaker;
        const char* verdict;
    };
    // NFPA 70 240.4(D) and Table 310.16 at 60 C with 240.4(B).
    const auto row =
        GENERATE(Row{"14 AWG", 15, "silent"}, Row{"14 AWG", 20, "error"}, Row{"12 AWG", 20, "silent"},
                 Row{"12 AWG", 25, "error"}, Row{"10 AWG", 30, "silent"}, Row{"10 AWG", 35, "error"},
                 Row{"8 AWG", 40, "silent"}, Row{"8 AWG", 45, "error"}, Row{"6 AWG", 60, "silent"},
                 Row{"6 AWG", 70, "error"}, Row{"3/8 inch", 20, "note"});
    CAPTURE(row.conductor, row.breaker);
    MainsBench bench;
    bench.c1().conductor = row.conductor;
    bench.c1().breaker = Amperes(row.breaker);
    CHECK(bench.verdict("breaker-exceeds-conductor") == row.verdict);
}

TEST_CASE("motor conductors carry 125 % of the largest motor") {
    struct Row {
        double amps;
        const char* verdict;
    };
    // NFPA 70 430.22; 14 AWG carries 15 A at 60 C: 12 A * 1.25 = 15 A.
    const auto row = GENERATE(Row{11.9, "silent"}, Row{12, "silent"}, Row{12.1, "error"});
    CAPTURE(row.amps);
    MainsBench bench;
    bench.c1().conductor = "14 AWG";
    bench.pump_type().amps = Amperes(row.amps);
    CHECK(bench.verdict("motor-conductor") == row.verdict);
}

TEST_CASE("a hardwired motor's conductor goes by the table, not the nameplate") {
    // NFPA 70 430.6(A)(1), Table 430.248: 3/4 hp at 115 V 13.8 A; 17.25 A is more than 14 AWG carries, 7 A is
    // not.
    MainsBench bench;
    bench.c1().conductor = "14 AWG";
    bench.pump_type().amps = Amperes(7);
    bench.pump_type().horsepower = 0.75;
    CHECK(bench.verdict("motor-conductor") == "silent");
    bench.c1().outlet = Outlet::hardwired;
    CHECK(bench.verdict("motor-conductor") == "error");
}

TEST_CASE("lighting hangs on at most 20 A") {
    struct Row {
        double breaker;
        const char* verdict;
    };
    // NFPA 70 (2017, 2020) 411.7, (2023) 411.8.
    const auto row = GENERATE(Row{15, "silent"}, Row{20, "silent"}, Row{25, "error"});
    CAPTURE(row.breaker);
    MainsBench bench;
    bench.c2().breaker = Amperes(row.breaker);
    CHECK(bench.verdict("lighting-branch-over-20a") == row.verdict);
    bench.c1().breaker = Amperes(30); // a pump circuit may be larger
    CHECK(bench.verdict("lighting-branch-over-20a") == row.verdict);
}

TEST_CASE("drop is judged at 3 %") {
    struct Row {
        double length_feet;
        const char* verdict;
    };
    // NFPA 70 (2017) 210.19(A)(1) informational note 4. A resistive 10 A on 12 AWG (Table 9: 2.0 ohm/kft) at
    // 120 V: 3.6 V at 90 ft exactly.
    const auto row = GENERATE(Row{89.9, "silent"}, Row{90, "silent"}, Row{90.1, "warning"});
    CAPTURE(row.length_feet);
    MainsBench bench;
    bench.c1().length = feet(row.length_feet);
    bench.pump_type().amps = Amperes(10);
    bench.pump_type().watts = Watts(1150); // power factor one
    CHECK(bench.verdict("branch-drop") == row.verdict);
}

TEST_CASE("international drop limits are 3 % for lights and 5 % for pumps") {
    // IEC 60364-5-52 Table G.52.1, from memory. 10 A resistive on 12 AWG at 120 V: 5 % = 6 V at 150 ft.
    MainsBench bench;
    bench.site.settings.code = CodeFamily::iec;
    bench.pump_type().amps = Amperes(10);
    bench.pump_type().watts = Watts(1150);
    bench.c1().length = feet(149);
    CHECK(bench.verdict("branch-drop") == "silent");
    bench.c1().length = feet(151);
    REQUIRE(bench.verdict("branch-drop") == "warning");
    CHECK(bench.findings_of("branch-drop")[0].source.find("confirm") != std::string::npos);
    bench.site.transformers[0].circuit = "C1"; // now it feeds lights as well
    bench.c1().length = feet(91);
    CHECK(bench.verdict("branch-drop") == "warning");
}

TEST_CASE("a circuit that is open says what to write, once for each rule that needs it") {
    struct Row {
        const char* rule;
        const char* write;
    };
    const auto row =
        GENERATE(Row{"circuit-overloaded", "breaker"}, Row{"breaker-exceeds-conductor", "conductor"},
                 Row{"motor-conductor", "conductor"}, Row{"lighting-branch-over-20a", "breaker"},
                 Row{"branch-drop", "length"}, Row{"burial-depth", "wiring"}, Row{"cord-too-short", "at"},
                 Row{"receptacle-near-water", "at"});
    CAPTURE(row.rule);
    MainsBench bench;
    BranchCircuit open;
    open.id = "C1";
    open.gfci = true;
    open.wet_cover = true;
    bench.c1() = open;
    if (std::string(row.rule) == "lighting-branch-over-20a") bench.site.transformers[0].circuit = "C1";
    const auto found = bench.findings_of(row.rule);
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == Severity::note);

    CHECK(found[0].hint.find(row.write) != std::string::npos);
}
