#include <catch2/catch.hpp>

#include "support/garden.hpp"
#include "support/ngspice.hpp"
#include "support/random_garden.hpp"
#include <cmath>

using namespace rillwatt;
using rillwatt::test::Garden;
using rillwatt::test::random_garden;

// ngspice, the general-purpose circuit simulator of the Debian package, on the same networks: 1e-6 V at every
// node. The transformer is controlled sources behind an impedance there, a lamp a behavioural current source.

namespace {

void check_against_ngspice(const Network& network) {
    const NetworkSolution ours = solve(network);
    REQUIRE(ours.converged);
    CHECK(ours.residual_volts <= kirchhoff_tolerance_volts);
    const std::vector<double> theirs = test::ngspice_lamp_volts(network);
    double worst = 0;
    for (std::size_t i = 0; i < theirs.size(); ++i)
        worst = std::max(worst, std::abs(ours.lamp_volts[i] - theirs[i]));
    CHECK(worst < 1e-6);
}

void check_against_ngspice(const Garden& garden) {
    check_against_ngspice(make_network(garden.circuit(), operating_cases(garden.site.settings).at(0)));
}

Garden chain(int lamps, double va) {
    Garden garden;
    garden.cable("12/2", 0.0065).cable("18/2", 0.026);
    garden.lamp_type("l", {.va = va, .lead_metres = 5, .lead_cable = "18/2"});
    garden.ideal_transformer("T").run("A", "T", 13, "12/2");
    for (int k = 0; k < lamps; ++k)
        garden.fixture("f" + std::to_string(k), k == 0 ? "A" : "f" + std::to_string(k - 1), 3, "l");
    return garden;
}

void add_mixed_types(Garden& garden) {
    garden.cable("12/2", 0.0065).cable("18/2", 0.026);
    garden.lamp_type("power", {.va = 20, .lead_metres = 6, .lead_cable = "18/2"});
    garden.lamp_type("current", {.load = LoadModel::constant_current, .va = 18});
    garden.lamp_type("filament",
                     {.load = LoadModel::filament, .va = 35, .lead_metres = 3, .lead_cable = "18/2"});
    garden.lamp_type("resistance", {.load = LoadModel::resistance, .va = 25});
}

} // namespace

//  T --A-- f0 -- f1 -- f2 -- ... -- f19
TEST_CASE("ngspice agrees on a chain of twenty lamps with leads") { check_against_ngspice(chain(20, 5)); }

// The same chain with its loads raised until the last lamp has lost a third of its volts.
TEST_CASE("ngspice agrees on a chain near the most it can carry") {
    Network network = make_network(chain(20, 5).circuit(), {"nominal", 1, Celsius(75), true});
    for (double& power : network.power)
        power *= 2;
    std::vector<std::size_t> order(network.lamps.size());
    for (std::size_t k = 0; k < order.size(); ++k)
        order[k] = k;
    Network heavy = network;
    for (double& power : heavy.power)
        power *= 10;
    const double share = find_load_limit(heavy, order).share;
    for (std::size_t i = 0; i < network.power.size(); ++i)
        network.power[i] = 0.97 * share * heavy.power[i];
    check_against_ngspice(network);
}

//  T --A-- H --+-- power      every load model on one hub
//              +-- current
//              +-- filament -- power
//              +-- resistance -- filament
TEST_CASE("ngspice agrees on a star of mixed load models") {
    Garden garden;
    add_mixed_types(garden);
    garden.transformer("T", 300, 0.04, {12}).run("A", "T", 12, "12/2").splice("H", "A", 9);
    for (const char* model : {"power", "current", "filament", "resistance"})
        garden.fixture(model, "H", 6, model);
    garden.fixture("beyond filament", "filament", 7, "power");
    garden.fixture("beyond resistance", "resistance", 5, "filament");
    check_against_ngspice(garden);
}

//      +-- A, 12 V -- mixed chain      four runs pull on one winding of 8 % regulation
//  T --+-- B, 13 V -- ...
//      +-- C, 15 V -- ...
//      +-- D, 15 V -- ...
TEST_CASE("ngspice agrees on coupled taps behind one regulation") {
    Garden garden;
    add_mixed_types(garden);
    garden.transformer("T", 300, 0.08, {12, 13, 15});
    const double taps[] = {12, 13, 15, 15};
    const char* models[] = {"power", "filament", "current", "resistance"};
    for (int q = 0; q < 4; ++q) {
        const std::string run = "run" + std::to_string(q);
        garden.run(run, "T", taps[q], "12/2");
        std::string feed = run;
        for (int k = 0; k <= q; ++k) {
            const std::string id = run + "." + std::to_string(k);
            garden.fixture(id, feed, 8, models[(q + k) % 4]);
            feed = id;
        }
    }
    check_against_ngspice(garden);
}

//  T --A-- a -- b -- c -- d      a ring of six lamps: the link closes it from d back to A
//          '------ link ---'
TEST_CASE("ngspice agrees on a ring of constant-power lamps") {
    Garden garden = chain(6, 20);
    garden.link("L", "f5", "A", 10, "12/2");
    check_against_ngspice(garden);
}

// A ladder: two runs side by side on one tap, joined at three rungs.
//  A -- f0 -- f1 -- f2
//       |     |     |
//  B -- g0 -- g1 -- g2
TEST_CASE("ngspice agrees on two runs joined by three links") {
    Garden garden;
    add_mixed_types(garden);
    garden.transformer("T", 300, 0.05, {13}).run("A", "T", 13, "12/2").run("B", "T", 13, "12/2");
    const char* models[] = {"power", "current", "filament", "power", "resistance", "power"};
    for (int k = 0; k < 3; ++k) {
        const std::string n = std::to_string(k);
        const std::string before = std::to_string(k - 1);
        garden.fixture("f" + n, k == 0 ? "A" : "f" + before, 6, models[k]);
        garden.fixture("g" + n, k == 0 ? "B" : "g" + before, 11, models[k + 3]);
        garden.link("rung" + n, "f" + n, "g" + n, 4, "12/2");
    }
    check_against_ngspice(garden);
}

TEST_CASE("ngspice agrees on a link between runs of different taps") {
    Garden garden;
    add_mixed_types(garden);
    garden.transformer("T", 300, 0.05, {12, 13}).run("A", "T", 12, "12/2").run("B", "T", 13, "12/2");
    garden.fixture("a", "A", 15, "power").fixture("b", "B", 15, "filament");
    garden.link("L", "a", "b", 10, "12/2");
    check_against_ngspice(garden);
}

TEST_CASE("ngspice agrees on random gardens") {
    for (unsigned seed = 1; seed <= 12; ++seed) {
        CAPTURE(seed);
        check_against_ngspice(random_garden(
            seed,
            {.runs = static_cast<int>(seed % 4) + 1, .lamps = 30, .links = static_cast<int>(seed % 3)}));
    }
}
