#include "rillwatt/mains/breaker.hpp"
#include "rillwatt/mains/code_limits.hpp"

#include <catch2/catch.hpp>

#include "mains/mains_garden.hpp"
#include <cmath>

using namespace rillwatt;
using samples::MainsGarden;

TEST_CASE("a hardwired half horsepower motor is planned with the table current") {
    MainsGarden garden;
    garden.circuit("C1").outlet = Outlet::hardwired;
    garden.pump("P1", "C1", 115, 7.8, 600).horsepower = 0.5;
    const auto summary = garden.summary();
    const MainsLoad& load = summary.circuits[0].parts[0];
    // NFPA 70 Table 430.248: 1/2 hp at 115 V 9.8 A; 430.22: 12.25 A; 430.52: 250 % = 24.5 A, next standard 25
    // A.
    CHECK(load.amps == Amperes(9.8));
    CHECK(load.nameplate == Amperes(7.8));
    CHECK(load.origin == AmpsOrigin::motor_table);
    CHECK(summary.circuits[0].design_amps.value() == Approx(12.25));
    CHECK(standard_breaker_for(code_limits::motor_breaker_factor.value * *load.amps, 2020) == Amperes(25));
}

TEST_CASE("the table does not count where the nameplate is higher or the pump has a plug") {
    MainsGarden garden;
    garden.circuit("C1").outlet = Outlet::hardwired;
    garden.circuit("C2");
    garden.pump("P1", "C1", 115, 11, 800).horsepower = 0.5;
    garden.pump("P2", "C2", 115, 7.8, 600).horsepower = 0.5;
    const auto summary = garden.summary();
    CHECK(summary.circuits[0].parts[0].amps == Amperes(11));
    CHECK(summary.circuits[0].parts[0].table == Amperes(9.8));
    CHECK(summary.circuits[1].parts[0].amps == Amperes(7.8));
    CHECK_FALSE(summary.circuits[1].parts[0].table);
}

TEST_CASE("three hours a day make a load continuous, a minute less does not") {
    struct Row {
        double hours, continuous, design;
    };
    // NFPA 70 (2017, 2020) 210.19(A), 210.20(A): 125 % of what runs 3 hours or more; a lone motor takes 125 %
    // anyway (430.22), so the pump's design current is the same on both sides.
    const auto row = GENERATE(Row{2.98, 0, 5}, Row{3, 4, 5}, Row{24, 4, 5});
    MainsGarden garden;
    garden.circuit("C1");
    garden.pump("P1", "C1", 120, 4, 400);
    garden.site.pumps[0].hours_per_day = Hours(row.hours);
    const auto circuit = garden.summary().circuits[0];
    CHECK(circuit.continuous_amps.value() == Approx(row.continuous));
    CHECK(circuit.design_amps.value() == Approx(row.design));
}

TEST_CASE("design current takes 125 % of the continuous load and of the largest motor that is not in it") {
    MainsGarden garden;
    garden.circuit("C1");
    garden.pump("day and night", "C1", 120, 4, 400);
    garden.pump("an hour", "C1", 120, 6, 600);
    garden.pump("another hour", "C1", 120, 2, 200);
    garden.transformer("T1", "C1", 1.5);
    garden.site.pumps[1].hours_per_day = Hours(1);
    garden.site.pumps[2].hours_per_day = Hours(1);
    garden.site.settings.hours_per_night = Hours(2);
    const auto circuit = garden.summary().circuits[0];
    // 1.25 * 4 + 1.25 * 6 + 2 + 1.5
    CHECK(circuit.amps.value() == Approx(13.5));
    CHECK(circuit.continuous_amps.value() == Approx(4));
    CHECK(circuit.design_amps.value() == Approx(16));
    CHECK(circuit.loads == std::vector<std::string>{"day and night", "an hour", "another hour", "T1"});
    CHECK(circuit.feeds_pumps());
    CHECK(circuit.feeds_lights());
}

TEST_CASE("a solved transformer counts with its input, an open one with its rating") {
    MainsGarden garden;
    garden.circuit("C1");
    garden.transformer("T1", "C1", 1.7);
    garden.transformer("T2", "C1", std::nullopt);
    const auto circuit = garden.summary().circuits[0];
    CHECK(circuit.parts[0].origin == AmpsOrigin::solved);
    CHECK(circuit.parts[1].origin == AmpsOrigin::rating);
    CHECK(circuit.amps.value() == Approx(1.7 + 300.0 / 120));
    CHECK(circuit.design_amps.value() == Approx(1.25 * 4.2));
    CHECK(circuit.amps_known);
}

TEST_CASE("a transformer without a model leaves the circuit's current unknown") {
    MainsGarden garden;
    garden.circuit("C1");
    garden.transformer("T1", "C1", std::nullopt);
    garden.circuits.transformers[0].type = nullptr;
    const auto circuit = garden.summary().circuits[0];
    CHECK_FALSE(circuit.amps_known);
    CHECK_FALSE(circuit.drop_known);
}

TEST_CASE("drop adds the currents of different power factors by component") {
    // panel --- 100 ft of 12 AWG ---+--- pump 8 A, power factor 0.75
    //                               +--- transformer 3 A, power factor 1
    MainsGarden garden;
    auto& written = garden.circuit("C1");
    written.conductor = "12 AWG";
    written.length = feet(100);
    garden.pump("P1", "C1", 120, 8, 720);
    garden.transformer("T1", "C1", 3.0);
    const auto circuit = garden.summary().circuits[0];
    // NFPA 70 (2017) chapter 9 Table 9: 2.0 and 0.054 ohm/kft in PVC. In phase 8 * 0.75 + 3 = 9 A, in
    // quadrature 8 * sqrt(1 - 0.75^2) = 5.2915 A: 2 * 0.1 * (2.0 * 9 + 0.054 * 5.2915) = 3.65715 V.
    REQUIRE(circuit.drop_known);
    CHECK(circuit.drop_ratio == Approx(3.65715 / 120).epsilon(1e-5));
    // Starting, 48 A at power factor 0.4 instead of 8 A at 0.75:
    // 2 * 0.1 * (2.0 * (48 * 0.4 + 3) + 0.054 * 48 * 0.916515) = 9.35512 V.
    REQUIRE(circuit.dip);
    CHECK(circuit.dip->ratio == Approx(9.35512 / 120).epsilon(1e-5));
    CHECK(circuit.dip->amps == Amperes(48));
}

TEST_CASE("drop is unknown while conductor, length or a current is") {
    MainsGarden garden;
    garden.circuit("no conductor").length = feet(10);
    garden.circuit("no length").conductor = "12 AWG";
    garden.circuit("no such conductor").length = feet(10);
    garden.site.circuits[2].conductor = "12/2";
    const auto summary = garden.summary();
    for (const auto& circuit : summary.circuits)
        CHECK_FALSE(circuit.drop_known);
}

TEST_CASE("leakage adds up and what nobody wrote is named") {
    MainsGarden garden;
    garden.circuit("C1");
    garden.pump("P1", "C1", 120, 1, 100).leakage_ma = 0.3;
    garden.pump("P2", "C1", 120, 1, 100).leakage_ma = 0.5;
    garden.pump("P3", "C1", 120, 1, 100);
    const auto circuit = garden.summary().circuits[0];
    CHECK(circuit.leakage_ma == Approx(0.8));
    CHECK(circuit.no_leakage == std::vector<std::string>{"P3"});
}

TEST_CASE("a load that names no circuit is not lost") {
    MainsGarden garden;
    garden.pump("P1", "", 120, 1, 100);
    garden.site.pumps[0].circuit.reset();
    const auto summary = garden.summary();
    REQUIRE(summary.unassigned.size() == 1);
    CHECK(summary.unassigned[0].id == "P1");
}

TEST_CASE("energy of a year is watts times hours times nights") {
    MainsGarden garden;
    garden.circuit("C1");
    garden.pump("P1", "C1", 120, 2, 150); // 24 h a day
    garden.transformer("T1", "C1", 1.0);
    garden.site.settings.energy_price = 0.16;
    auto& nominal = garden.solution.cases[0];
    LampResult lamp;
    lamp.watts = Watts(180);
    nominal.lamps = {lamp};
    nominal.cable_loss = Watts(8);
    nominal.transformers[0].winding_loss = Watts(5);
    nominal.transformers[0].no_load = Watts(7);
    const auto cost = garden.summary().cost;
    // By hand: 200 W, 5 h a night, 365 nights = 365 kWh, at 0.16 58.40; 150 W pump, 8760 h = 1314 kWh.
    CHECK(cost.winding_loss == Watts(5));
    CHECK(cost.no_load == Watts(7));
    CHECK(cost.meter_watts() == Watts(200));
    CHECK(kilowatt_hours(cost.lights) == Approx(365));
    CHECK(cost.lights_cost.value() == Approx(58.40));
    CHECK(kilowatt_hours(cost.pumps) == Approx(1314));
    CHECK(cost.pumps_cost.value() == Approx(210.24));
    CHECK(cost.left_out.empty());
}

TEST_CASE("a transformer that could not be computed is named as left out of the energy") {
    MainsGarden garden;
    garden.circuit("C1");
    garden.transformer("T1", "C1", std::nullopt);
    CHECK(garden.summary().cost.left_out == std::vector<std::size_t>{0});
}
