#include <catch2/catch.hpp>

#include "support/garden.hpp"
#include <algorithm>
#include <cmath>

using namespace rillwatt;
using rillwatt::test::Garden;

// Published worked examples of lines fed from one end. Every row names its source; the tolerance is half of
// the last printed digit unless a reason stands beside it. All loads are constant currents, as in the books.
//
// Left out because the printed answer is wrong: FAA AC 43.13-1B CHG 1 Table 11-7, third row (prints 3.60 V
// where its own inputs give 3.555 V); Theraja example 40.13, page 1586, the same as Mehta 13.20, page 331
// (its answer breaks Kirchhoff's voltage law). Left out because reactance is: Mehta 14.1 and 14.2, page 359.

namespace {

constexpr double metres_per_ft = 0.3048;

/// Amperes drawn at a distance from the feed.
struct PointLoad {
    double metres;
    double amps;
};

/// tap ---- load ---- load ---- ... ; `ohms_per_metre` of ONE conductor.
Garden line(double tap, double ohms_per_metre, std::vector<PointLoad> loads) {
    Garden garden;
    garden.cable("c", ohms_per_metre).ideal_transformer("T").run("A", "T", tap, "c");
    std::stable_sort(loads.begin(), loads.end(),
                     [](const PointLoad& a, const PointLoad& b) { return a.metres < b.metres; });
    std::string feed = "A";
    double reached = 0;
    for (std::size_t k = 0; k < loads.size(); ++k) {
        const std::string id = "load " + std::to_string(k);
        garden.lamp_type(id, {.load = LoadModel::constant_current, .va = loads[k].amps * 12});
        garden.fixture(id, feed, loads[k].metres - reached, id);
        feed = id;
        reached = loads[k].metres;
    }
    return garden;
}

/// Amperes per metre over a line as one small load in the middle of each half metre: at the ends of those
/// stretches the volts are the same.
std::vector<PointLoad> uniform(double amps_per_metre, double metres) {
    constexpr double step = 0.5;
    std::vector<PointLoad> loads;
    for (double at = step / 2; at < metres; at += step)
        loads.push_back({at, amps_per_metre * step});
    return loads;
}

double volts_at(const Garden& garden, const SiteSolution& solution, double metres) {
    double reached = 0;
    for (const LampResult& lamp : solution.nominal().lamps) {
        reached += garden.site.fixtures.at(lamp.fixture).length->value();
        if (std::abs(reached - metres) < 1e-6) return lamp.volts.value();
    }
    FAIL("no load at " << metres);
    return 0;
}

struct PublishedVolts {
    double metres;
    double volts;
    double tolerance;
};

void check_line(const Garden& garden, const std::vector<PublishedVolts>& rows) {
    const SiteSolution solution = garden.solve();
    REQUIRE(solution.nominal().solved);
    for (const PublishedVolts& row : rows) {
        CAPTURE(row.metres);
        CHECK(volts_at(garden, solution, row.metres) == Approx(row.volts).margin(row.tolerance).epsilon(0));
    }
}

} // namespace

TEST_CASE("single loads: published drops of two-wire lines") {
    const struct {
        const char* source;
        double volts;
        double ohms_per_ft; // of one conductor
        double one_way_ft;
        double amps;
        double drop;
        double tolerance;
        double percent;
        double percent_tolerance;
    } rows[] = {
        {"US electrician training text, low-voltage module: 16 AWG stranded of NEC Table 8; 4.0 V, 16.7 % "
         "(the percentage from the rounded drop)",
         24, 4.99e-3, 100, 4, 4.0, 0.05, 16.7, 0.1},
        {"FAA AC 43.13-1B CHG 1 (2001) Table 11-7, row 1: 107 ft of wire in all", 28, 0.00044, 107 / 2.0, 20,
         0.942, 5e-4, 3.36, 0.01},
        {"FAA AC 43.13-1B CHG 1 (2001) Table 11-7, row 2: 90 ft of wire in all", 28, 0.00028, 90 / 2.0, 20,
         0.504, 5e-4, 1.80, 0.005},
        {"FAA AC 43.13-1B CHG 1 (2001) Table 11-7, row 4: 100 ft of wire in all", 28, 0.00306, 100 / 2.0, 20,
         6.12, 5e-3, 21.86, 0.01},
        {"US licence-exam lesson, K method: K 12.9, 12 AWG 6530 cmil", 120, 12.9 / 6530, 100, 20, 7.9, 0.05,
         6.6, 0.05},
        {"US licence-exam lesson, K method: K 12.9, 8 AWG 16510 cmil", 120, 12.9 / 16510, 100, 20, 3.1, 0.05,
         2.6, 0.05},
        {"Agricultural-engineering textbook, metric problem: 2.5 mm2, 0.676 ohm/100 m, 24 m", 120,
         0.676e-2 * metres_per_ft, 24 / metres_per_ft, 10, 3.244, 1e-3, 2.704, 1e-3},
        {"UK wiring course: 2.5 mm2 twin, 18 mV/A/m for both conductors, 16 A over 18 m", 230,
         0.009 * metres_per_ft, 18 / metres_per_ft, 16, 5.18, 5e-3, 2.25, 5e-3},
        {"Kuphaldt, Lessons in Electric Circuits vol. I, physics of conductors: rho 10.09, 116,035 cmil, "
         "2300 ft "
         "each way, 230 V to 220 V at 25 A",
         230, 10.09 / 116035, 2300, 25, 10, 1e-3, 4.348, 1e-3},
    };
    for (const auto& row : rows) {
        CAPTURE(row.source);
        const Garden garden =
            line(row.volts, row.ohms_per_ft / metres_per_ft, {{row.one_way_ft * metres_per_ft, row.amps}});
        const SiteSolution solution = garden.solve();
        const LampResult& lamp = solution.nominal().lamps.at(0);
        CHECK(lamp.drop.value() == Approx(row.drop).margin(row.tolerance).epsilon(0));
        CHECK(100 * lamp.drop_ratio == Approx(row.percent).margin(row.percent_tolerance).epsilon(0));
    }
}

// Kuphaldt, Lessons in Electric Circuits vol. I, physics of conductors: over 2300 ft of 14 AWG (4107 cmil)
// each way, 11.301 ohm, even a short circuit draws no more than 20.352 A from 230 V.
TEST_CASE("a line too thin for its load carries what flows into a short circuit") {
    const Garden garden = line(230, 10.09 / 4107 / metres_per_ft, {{2300 * metres_per_ft, 25}});
    const SiteSolution solution = garden.solve();
    REQUIRE_FALSE(solution.nominal().solved);
    CHECK(25 * solution.nominal().unsolved.at(0).carried_share == Approx(20.352).margin(5e-4));
}

// Kuphaldt, same chapter, temperature example: 14 V, 15 ohm in each wire at 20 C, alpha 0.004041, 250 ohm
// load; at 20 C 12.5 V and 0.75 V per wire, at 35 C 12.42 V and 0.79 V.
TEST_CASE("a warmer line drops more") {
    const struct {
        double celsius;
        double volts;
        double per_wire;
    } rows[] = {{20, 12.5, 0.75}, {35, 12.42, 0.79}};
    for (const auto& row : rows) {
        CAPTURE(row.celsius);
        Garden garden;
        garden.cable("c", 15, Celsius(20), 0.004041);
        garden.lamp_type("load", {.load = LoadModel::resistance, .va = 12 * 12 / 250.0});
        garden.ideal_transformer("T").run("A", "T", 14, "c").fixture("f", "A", 1, "load");
        garden.site.settings.conductor_temperature = Celsius(row.celsius);
        const SiteSolution solution = garden.solve();
        CHECK(solution.nominal().lamps.at(0).volts.value() == Approx(row.volts).margin(5e-3));
        CHECK(solution.nominal().segments.at(0).drop.value() / 2 == Approx(row.per_wire).margin(5e-3));
    }
}

// Grob's Basic Electronics, example 11-3, page 340: 100 ft of No. 20 copper, 1022 cmil, rho 10.4: 1.02 ohm.
TEST_CASE("resistance of a length of wire") {
    const Garden garden = line(12, 10.4 / 1022 / metres_per_ft, {{50 * metres_per_ft, 0.1}});
    CHECK(garden.solve().nominal().segments.at(0).ohms.value() == Approx(1.02).margin(5e-3));
}

//   A ---500 m--- C ---500 m--- D ---600 m--- E ---400 m--- B
//               100 A         150 A         200 A          50 A
TEST_CASE("Mehta, Principles of Power System, 4th edition 2005, example 13.1, page 313") {
    check_line(line(300, 0.01e-3, {{500, 100}, {1000, 150}, {1600, 200}, {2000, 50}}),
               {{500, 295.0, 0.05}, {1000, 291.0, 0.05}, {1600, 288.0, 0.05}, {2000, 287.6, 0.05}});
}

//   A --75 m-- B --100 m-- C --50 m-- D      0.27 cm2, 1.78e-6 ohm cm
//            12 A        15 A       20 A
// The book rounds to 0.066 ohm per 100 m and so ends up to 0.01 V off.
TEST_CASE("Mehta example 13.4, page 315") {
    check_line(line(250, 1.78e-6 / 0.27 * 100, {{75, 12}, {175, 15}, {225, 20}}),
               {{75, 245.35, 0.01}, {175, 240.73, 0.01}, {225, 239.41, 0.01}});
}

// Mehta example 13.5, page 317: 2 A/m over 200 m, 0.3 ohm/km in a single wire: drop 22.5 V at 150 m and 24 V
// at the end. The same line in Theraja, example 40.2, page 1577, prints 12 V because it counts one conductor
// only: a two-wire cable drops twice that, and so must ours.
TEST_CASE("Mehta example 13.5: a uniformly loaded line drops in both of its conductors") {
    auto loads = uniform(2, 200);
    loads.push_back({150, 0});
    loads.push_back({200, 0});
    const Garden garden = line(250, 0.3e-3, loads);
    check_line(garden, {{150, 250 - 22.5, 5e-3}, {200, 250 - 24.0, 5e-3}});
    CHECK(250 - volts_at(garden, garden.solve(), 200) != Approx(12).margin(1));
}

//   A --100-- 40 A --50-- 20 A --150-- 60 A --100-- 30 A --100-- Q, and 0.1 A/m all along
TEST_CASE("Theraja, A Textbook of Electrical Technology vol. III, example 40.9, page 1583") {
    auto loads = uniform(0.1, 500);
    for (const PointLoad& load : {PointLoad{100, 40}, {150, 20}, {300, 60}, {400, 30}, {500, 0}})
        loads.push_back(load);
    check_line(line(250, 0.0005 / 2, loads), {{500, 225.25, 5e-3}, {150, 236.56, 5e-3}});
}

//   A --40-- 30 A --60-- 40 A --50-- 100 A --100-- 50 A     1.164 cm2, 1.78e-8 ohm m: drop 10 V
// Mehta example 13.2, page 314, the same as Theraja 40.3, whose companion prints mm2 as cm2.
TEST_CASE("Mehta example 13.2, page 314: the section found keeps the drop at its limit") {
    const Garden garden = line(250, 1.78e-8 / 1.164e-4, {{40, 30}, {100, 40}, {150, 100}, {250, 50}});
    check_line(garden, {{250, 250 - 10.0, 5e-3}});
}
