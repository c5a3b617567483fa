#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/site/read_site.hpp"
#include "rillwatt/solver/network.hpp"

#include <catch2/catch.hpp>

#include "support/garden.hpp"
#include "support/ngspice.hpp"
#include "support/paths.hpp"
#include "support/random_garden.hpp"
#include "support/temporary_folder.hpp"
#include <cmath>
#include <numeric>

using namespace rillwatt;
using rillwatt::test::Garden;
using rillwatt::test::ngspice_volts;
using rillwatt::test::random_garden;
using rillwatt::test::SpiceVolts;

// ngspice, the general-purpose circuit simulator of the Debian package, on the same gardens: 1e-6 V at every
// run, joint and lamp, in the nominal and the weak case. Its decks are written from the site and the catalog,
// so that building the circuit and the network is compared along with solving them.

namespace {

void check_case(const Site& site, const Catalog& catalog, const SiteLengths& lengths,
                const test::SpiceCase& under, const CaseResult& ours) {
    CAPTURE(under.supply_factor, under.conductor_celsius);
    const SpiceVolts theirs = ngspice_volts(site, catalog, lengths, under);
    REQUIRE(ours.runs.size() == site.runs.size());
    REQUIRE(ours.lamps.size() == site.fixtures.size());
    double worst = 0;
    const auto compare = [&worst](Volts a, double b) { worst = std::max(worst, std::abs(a.value() - b)); };
    for (const RunResult& run : ours.runs)
        compare(run.volts, theirs.runs.at(run.run));
    for (const LampResult& lamp : ours.lamps) {
        compare(lamp.splice_volts, theirs.joints.at(lamp.fixture));
        compare(lamp.volts, theirs.lamps.at(lamp.fixture));
    }
    CHECK(worst < 1e-6);
}

/// Both cases with load: the weak one has the supply down by the band and its cables at 75 C or above.
void check_cases(const Site& site, const Catalog& catalog, const SiteLengths& lengths,
                 const SiteSolution& solution) {
    REQUIRE(solution.nominal().solved);
    const double celsius = site.settings.conductor_temperature.value();
    check_case(site, catalog, lengths, {1, celsius}, solution.nominal());
    if (solution.weak().solved)
        check_case(site, catalog, lengths, {1 - site.settings.supply_band, std::max(celsius, 75.0)},
                   solution.weak());
}

void check_against_ngspice(const Garden& garden) {
    check_cases(garden.site, garden.catalog, garden.lengths(), garden.solve());
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

// The same chain with its loads raised to 97 % of what it can carry: the last lamp has lost a third of its
// volts.
TEST_CASE("ngspice agrees on a chain near the most it can carry") {
    constexpr double heavy_va = 100;
    const Network heavy = make_network(chain(20, heavy_va).circuit(), {"nominal", 1, Celsius(75), true});
    std::vector<std::size_t> order(heavy.lamps.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const double share = find_load_limit(heavy, order).share;
    const Garden garden = chain(20, 0.97 * share * heavy_va);
    check_against_ngspice(garden);
    CHECK(garden.solve().nominal().lamps.back().drop_ratio > 0.3);
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

// 115 V on a primary of 120 V for the one, the site's 120 V for the other; cold cables, a table of its own.
TEST_CASE("ngspice agrees on two transformers, one of them on a low supply") {
    Garden garden;
    garden.cable("12/2", 0.0065, Celsius(75), 0.00323).cable("18/2", 0.026);
    garden.lamp_type("power", {.va = 20, .lead_metres = 6, .lead_cable = "18/2"});
    garden.lamp_type("filament", {.load = LoadModel::filament, .va = 35});
    garden.site.settings.conductor_temperature = Celsius(5);
    BranchCircuit circuit;
    circuit.id = "C";
    circuit.volts = Volts(115);
    garden.site.circuits.push_back(circuit);
    garden.transformer("T", 150, 0.05, {12, 14}).transformer("U", 300, 0.03, {13});
    garden.site.transformers[0].circuit = "C";
    garden.run("A", "T", 14, "12/2").run("B", "U", 13, "12/2").run("C2", "T", 12, "18/2");
    garden.fixture("a", "A", 20, "filament").fixture("b", "B", 30, "power").fixture("c", "C2", 5, "power");
    garden.fixture("bb", "b", 10, "filament", "18/2").fixture("bbb", "bb", 3, "power");
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

// From the text of the file on: lengths from the plan, the built-in catalogs, cables handed on from feed to
// feed.
TEST_CASE("ngspice agrees on the example garden") {
    const std::string folder = std::string(RILLWATT_SOURCE_DIR) + "/examples/fernhollow/";
    const LoadResult<Site> site = read_site(test::file_text(folder + "site.toml"), "site.toml");
    REQUIRE(site);
    LoadResult<Catalog> catalog =
        read_catalog(test::file_text(folder + "stock.toml"), "stock.toml", *read_built_in_catalog().value);
    REQUIRE(catalog);
    REQUIRE(check_catalog(*catalog.value).empty());
    const SiteLengths lengths = measure_lengths(*site.value);
    const auto circuits = build_circuits(*site.value, *catalog.value, lengths);
    REQUIRE(circuits);
    check_cases(*site.value, *catalog.value, lengths, solve_site(*site.value, *circuits.value));
}
