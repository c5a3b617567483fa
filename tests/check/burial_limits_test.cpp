#include <catch2/catch.hpp>

#include "check/mains_bench.hpp"

using namespace rillwatt;
using samples::MainsBench;

TEST_CASE("burial depth is judged by wiring and crossing, and 12 in do for a home's GFCI circuit") {
    struct Row {
        Wiring wiring;
        Crossing crosses;
        bool dwelling, gfci;
        double needed_inches;
    };
    // NFPA 70 (2017) Table 300.5, (2023) Table 300.5(A): columns 1 to 3, and column 4 with note 4.
    const auto row = GENERATE(Row{Wiring::direct_burial, Crossing::lawn, true, false, 24},
                              Row{Wiring::direct_burial, Crossing::lawn, true, true, 12},
                              Row{Wiring::direct_burial, Crossing::lawn, false, true, 24},
                              Row{Wiring::rigid_metal, Crossing::lawn, true, true, 6},
                              Row{Wiring::pvc, Crossing::lawn, true, false, 18},
                              Row{Wiring::pvc, Crossing::lawn, true, true, 12},
                              Row{Wiring::direct_burial, Crossing::slab, true, true, 6},
                              Row{Wiring::direct_burial, Crossing::slab, true, false, 18},
                              Row{Wiring::pvc, Crossing::slab, false, true, 4},
                              Row{Wiring::rigid_metal, Crossing::slab, true, true, 4},
                              Row{Wiring::pvc, Crossing::driveway, true, false, 18},
                              Row{Wiring::pvc, Crossing::driveway, true, true, 12},
                              Row{Wiring::rigid_metal, Crossing::driveway, false, true, 24});
    CAPTURE(static_cast<int>(row.wiring), static_cast<int>(row.crosses), row.dwelling, row.gfci);
    MainsBench bench;
    bench.site.settings.dwelling = row.dwelling;
    bench.c1().wiring = row.wiring;
    bench.c1().crosses = row.crosses;
    bench.c1().gfci = row.gfci;
    bench.c2().wiring = Wiring::indoor;
    bench.c1().cover = inches(row.needed_inches + 0.1);
    CHECK(bench.verdict("burial-depth") == "silent");
    bench.c1().cover = inches(row.needed_inches);
    CHECK(bench.verdict("burial-depth") == "silent");
    bench.c1().cover = inches(row.needed_inches - 0.1);
    CHECK(bench.verdict("burial-depth") == "error");
}

TEST_CASE("the shallower column ends at 120 V and 20 A") {
    MainsBench bench;
    bench.c1().wiring = Wiring::direct_burial;
    bench.c1().cover = inches(12);
    CHECK(bench.verdict("burial-depth") == "silent");
    bench.c1().breaker = Amperes(25);
    CHECK(bench.verdict("burial-depth") == "error");
    bench.c1().breaker = Amperes(20);
    bench.c1().volts = Volts(240);
    CHECK(bench.verdict("burial-depth") == "error");
    bench.c1().volts = Volts(120);
    bench.c1().breaker.reset();
    CHECK(bench.verdict("burial-depth") == "note");
}

TEST_CASE("the crew's own low-voltage cable needs 6 in") {
    struct Row {
        double cover;
        const char* verdict;
    };
    // NFPA 70 (2017) Table 300.5 column 5.
    const auto row = GENERATE(Row{6.1, "silent"}, Row{6, "silent"}, Row{5.9, "error"});
    MainsBench bench;
    bench.site.settings.cable_cover = inches(row.cover);
    CHECK(bench.verdict("burial-depth") == row.verdict);
}

TEST_CASE("a buried circuit without its depth says which depth to write") {
    MainsBench bench;
    bench.c1().cover.reset();
    const auto found = bench.findings_of("burial-depth");
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == Severity::note);
    CHECK(found[0].hint.find("18 in") != std::string::npos);
}
