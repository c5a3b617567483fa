#include <catch2/catch.hpp>

#include "support/garden.hpp"
#include <cmath>

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

/// One lamp at the end of one length; `loop_ohms` out and back.
Garden single_lamp(double tap, double loop_ohms, const test::LampSpec& spec) {
    Garden garden;
    garden.cable("c", loop_ohms / 2).lamp_type("l", spec);
    garden.ideal_transformer("T").run("A", "T", tap, "c").fixture("f", "A", 1, "l");
    return garden;
}

const LampResult& only_lamp(const SiteSolution& solution) { return solution.nominal().lamps.at(0); }

} // namespace

// 100 ft of 12 AWG stranded, 1.98 ohm per 1000 ft (NFPA 70 chapter 9 Table 8): 0.396 ohm out and back, 12 V,
// 60 W at 12 V. By arithmetic from the load models: constant power V = (12 + sqrt(144 - 4 * 0.396 * 60)) / 2,
// constant current 12 - 0.396 * 5, resistance 12 * 2.4 / (2.4 + 0.396); the filament by hand iteration with
// the exponent 0.55 (Fink and Beaty, Standard Handbook for Electrical Engineers, 11th edition, page 22-8).
TEST_CASE("the four load models on 100 ft of 12 AWG") {
    const struct {
        LoadModel load;
        double volts;
        double amps;
    } rows[] = {
        {LoadModel::constant_power, 9.4986, 6.3167},
        {LoadModel::constant_current, 10.0200, 5.0000},
        {LoadModel::resistance, 10.3004, 4.2918},
        {LoadModel::filament, 10.1903, 4.5701},
    };
    for (const auto& row : rows) {
        CAPTURE(static_cast<int>(row.load));
        const SiteSolution solution = single_lamp(12, 0.396, {.load = row.load, .va = 60}).solve();
        CHECK(only_lamp(solution).volts.value() == Approx(row.volts).margin(5e-5));
        CHECK(only_lamp(solution).amps.value() == Approx(row.amps).margin(5e-5));
    }
}

TEST_CASE("a single constant-power lamp agrees with the quadratic formula to 1e-9 V") {
    for (const double ohms : {0.0, 0.01, 0.1, 0.5, 1.0, 2.0})
        for (const double tap : {12.0, 15.0})
            for (const double va : {1.0, 4.2, 17.9}) {
                CAPTURE(ohms, tap, va);
                const SiteSolution solution = single_lamp(tap, ohms, {.va = va}).solve();
                const double expected = (tap + std::sqrt(tap * tap - 4 * ohms * va)) / 2;
                REQUIRE(solution.nominal().solved);
                CHECK(std::abs(only_lamp(solution).volts.value() - expected) < 1e-9);
            }
}

// The most a source of V volts can deliver through R ohms is V^2 / 4R, at half its volts.
TEST_CASE("a constant-power lamp has an operating point up to V^2/4R and none beyond") {
    const double tap = 12;
    const double ohms = 0.396;
    const double limit = tap * tap / (4 * ohms);
    CHECK(limit == Approx(90.909).margin(5e-4));

    SECTION("at 99.9 % it has one, a little above half the volts") {
        const SiteSolution solution = single_lamp(tap, ohms, {.va = 0.999 * limit}).solve();
        REQUIRE(solution.nominal().solved);
        CHECK(std::abs(only_lamp(solution).volts.value() - 6 * (1 + std::sqrt(0.001))) < 1e-9);
    }
    SECTION("at 99.9999 % too") {
        const SiteSolution solution = single_lamp(tap, ohms, {.va = 0.999999 * limit}).solve();
        REQUIRE(solution.nominal().solved);
        CHECK(std::abs(only_lamp(solution).volts.value() - 6 * (1 + std::sqrt(1e-6))) < 1e-8);
    }
    for (const double excess : {1.001, 1.000001, 1.5, 40.0}) {
        CAPTURE(excess);
        const SiteSolution solution = single_lamp(tap, ohms, {.va = excess * limit}).solve();
        REQUIRE_FALSE(solution.nominal().solved);
        CHECK(solution.nominal().lamps.empty());
        REQUIRE(solution.nominal().unsolved.size() == 1);
        CHECK(std::abs(solution.nominal().unsolved[0].carried_share * excess - 1) < 1e-9);
    }
}

TEST_CASE("a lead counts in the lamp's branch only: the splice stands between") {
    Garden garden;
    garden.cable("c", 0.1)
        .cable("lead", 0.05)
        .lamp_type("l",
                   {.load = LoadModel::constant_current, .va = 12, .lead_metres = 2, .lead_cable = "lead"});
    garden.ideal_transformer("T").run("A", "T", 12, "c").fixture("f", "A", 1, "l").fixture("g", "f", 1, "l");
    const SiteSolution solution = garden.solve();
    const LampResult& near = test::lamp(garden, solution.nominal(), "f");
    const LampResult& far = test::lamp(garden, solution.nominal(), "g");
    CHECK(near.splice_volts.value() == Approx(12 - 2 * 0.2));
    CHECK(near.volts.value() == Approx(12 - 2 * 0.2 - 0.2));
    CHECK(far.splice_volts.value() == Approx(12 - 2 * 0.2 - 0.2));
    CHECK(far.volts.value() == Approx(12 - 2 * 0.2 - 0.2 - 0.2));
}

// Two lamps of 1 A each beyond 1 ohm: 12 V - 2 V. With a factor k on all loads the far lamp reaches 0 V at
// 12 = 2 k + 10 k.
TEST_CASE("a constant-current lamp whose volts would not be positive has no operating point") {
    Garden garden;
    garden.cable("c", 0.5).lamp_type("near", {.load = LoadModel::constant_current, .va = 12});
    garden.lamp_type("far", {.load = LoadModel::constant_current, .va = 12});
    garden.ideal_transformer("T").run("A", "T", 12, "c");
    garden.fixture("n", "A", 1, "near").fixture("f", "n", 10, "far");
    SECTION("just inside") {
        garden.catalog.fixtures["far"].va = VoltAmperes(0.999 * 12 * 11 / 11);
        CHECK(garden.solve().nominal().solved);
    }
    SECTION("at zero volts and beyond") {
        garden.site.fixtures[1].length = Metres(12);
        const SiteSolution solution = garden.solve();
        REQUIRE_FALSE(solution.nominal().solved);
        const NoOperatingPoint& none = solution.nominal().unsolved.at(0);
        CHECK(std::abs(none.carried_share - 12.0 / 14) < 1e-9);
        CHECK(none.fixture == 1);
        CHECK(none.run == 0);
    }
}

TEST_CASE("filament and resistance lamps always have an operating point, however long the cable") {
    for (const LoadModel load : {LoadModel::filament, LoadModel::resistance})
        for (const double ohms : {1.0, 10.0, 100.0, 10000.0, 1e7}) {
            CAPTURE(static_cast<int>(load), ohms);
            const SiteSolution solution = single_lamp(12, ohms, {.load = load, .va = 60}).solve();
            REQUIRE(solution.nominal().solved);
            const LampResult& lamp = only_lamp(solution);
            CHECK(lamp.volts.value() > 0);
            CHECK(std::abs(12 - ohms * lamp.amps.value() - lamp.volts.value()) < 1e-9);
        }
}
