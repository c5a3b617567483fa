#include "rillwatt/solver/network.hpp"

#include <catch2/catch.hpp>

#include "support/garden.hpp"
#include "support/random_garden.hpp"
#include <cmath>
#include <numeric>

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

const OperatingCase nominal{"nominal", 1, Celsius(75), true};

std::vector<std::size_t> file_order(const Network& network) {
    std::vector<std::size_t> order(network.lamps.size());
    std::iota(order.begin(), order.end(), 0U);
    return order;
}

void scale(Network& network, double factor) {
    for (auto* loads : {&network.power, &network.current, &network.conductance})
        for (double& load : *loads)
            load *= factor;
    for (FilamentLoad& lamp : network.filaments)
        lamp.amps_at_rated *= factor;
}

/// A network of the same loads, raised until nothing carries them.
Network overloaded(const Garden& garden) {
    Network network = make_network(garden.circuit(), nominal);
    scale(network, 30);
    REQUIRE_FALSE(solve(network).converged);
    return network;
}

void check_sharp_limit(Network network) {
    const LoadLimit limit = find_load_limit(network, file_order(network));
    REQUIRE(limit.share > 0);
    CHECK(limit.share < 1);
    Network inside = network;
    scale(inside, limit.share * (1 - 1e-9));
    Network outside = network;
    scale(outside, limit.share * (1 + 1e-9));
    const NetworkSolution solution = solve(inside);
    CHECK(solution.converged);
    CHECK(solution.residual_volts <= kirchhoff_tolerance_volts);
    CHECK_FALSE(solve(outside).converged);
}

} // namespace

TEST_CASE("the limit of a circuit parts the loads it carries from those it does not, to 1e-9") {
    SECTION("random trees of constant-power lamps") {
        for (unsigned seed = 1; seed <= 15; ++seed) {
            CAPTURE(seed);
            check_sharp_limit(overloaded(
                test::random_garden(seed, {.runs = static_cast<int>(seed % 3) + 1, .mixed_loads = false})));
        }
    }
    SECTION("rings") {
        for (unsigned seed = 1; seed <= 15; ++seed) {
            CAPTURE(seed);
            check_sharp_limit(overloaded(test::random_garden(
                seed, {.runs = static_cast<int>(seed % 3) + 1, .links = 3, .mixed_loads = false})));
        }
    }
    SECTION("mixed lamps") {
        for (unsigned seed = 1; seed <= 15; ++seed) {
            CAPTURE(seed);
            check_sharp_limit(
                overloaded(test::random_garden(seed, {.runs = static_cast<int>(seed % 3) + 1})));
        }
    }
}

//  T --- 1 ohm --- a     The lamp is fed both ways round: 0.5 ohm in all, twice what one way carries.
//  '----- 1 ohm ---'
TEST_CASE("a ring carries loads that neither of its ways could carry alone") {
    Garden garden;
    garden.cable("c", 0.5).lamp_type("l", {.va = 60});
    garden.ideal_transformer("T").run("A", "T", 12, "c").fixture("a", "A", 1, "l");
    const double one_way = 144.0 / 4;
    Network network = make_network(garden.circuit(), nominal);
    CHECK_FALSE(solve(network).converged);
    CHECK(std::abs(60 * find_load_limit(network, {0}).share - one_way) < 1e-7);
    garden.link("L", "A", "a", 1, "c");
    network = make_network(garden.circuit(), nominal);
    const NetworkSolution solution = solve(network);
    REQUIRE(solution.converged);
    CHECK(std::abs(solution.lamp_volts[1] - (12 + std::sqrt(144 - 4 * 0.5 * 60)) / 2) < 1e-9);
    scale(network, 2);
    CHECK(std::abs(120 * find_load_limit(network, {0}).share - 2 * one_way) < 1e-7);
}

TEST_CASE("a transformer's own impedance limits what its runs can draw together") {
    Garden garden;
    garden.cable("c", 0).lamp_type("l", {.va = 400});
    garden.transformer("T", 100, 0.1, {12}).run("A", "T", 12, "c").run("B", "T", 12, "c");
    garden.fixture("a", "A", 1, "l").fixture("b", "B", 1, "l");
    // 12 V behind 0.1 * 144 / 100 = 0.144 ohm: 250 VA at the most.
    const Network network = make_network(garden.circuit(), nominal);
    CHECK_FALSE(solve(network).converged);
    CHECK(std::abs(800 * find_load_limit(network, {0, 1}).share - 250) < 1e-6);
}

TEST_CASE("cables, taps and transformer of a network are exchanged without building it anew") {
    const Garden garden = test::random_garden(7, {});
    Garden other = garden;
    other.cable("12/2", 2e-3).site.runs[0].tap = Volts(15);
    auto& type = other.catalog.transformers.at("type of T");
    type.regulation = 0.02;
    type.va = VoltAmperes(600);

    Network network = make_network(garden.circuit(), nominal);
    const TransformerCircuit circuit = other.circuit();
    for (std::size_t i = 0; i < circuit.nodes.size(); ++i)
        if (circuit.nodes[i].parent >= 0)
            network.ohms[i] = cable_ohms(*circuit.nodes[i].cable, *circuit.nodes[i].length, Celsius(75));
    network.tap[0] = 15;
    set_transformer(network, type, Volts(120), nominal);
    const NetworkSolution exchanged = solve(network);
    const NetworkSolution built = solve(make_network(circuit, nominal));
    REQUIRE(exchanged.converged);
    CHECK(exchanged.lamp_volts == built.lamp_volts);
}

TEST_CASE("the network of one case becomes that of another, and makes room for that of another circuit") {
    const OperatingCase cold{"cold", 0.9, Celsius(20), true};
    const auto same = [](const Network& a, const Network& b) {
        CHECK(a.feed == b.feed);
        CHECK(a.ohms == b.ohms);
        CHECK(a.lead_ohms == b.lead_ohms);
        CHECK(a.power == b.power);
        CHECK(a.current == b.current);
        CHECK(a.conductance == b.conductance);
        CHECK(a.lamps == b.lamps);
        CHECK(a.run_node == b.run_node);
        CHECK(a.tap == b.tap);
        CHECK(a.filaments.size() == b.filaments.size());
        REQUIRE(a.links.size() == b.links.size());
        for (std::size_t k = 0; k < a.links.size(); ++k)
            CHECK(a.links[k].ohms == b.links[k].ohms);
        CHECK(a.supply_ratio == b.supply_ratio);
        CHECK(a.regulation_per_va == b.regulation_per_va);
    };
    Network network;
    for (const int lamps : {30, 2, 17}) {
        const Garden garden = test::random_garden(static_cast<unsigned>(lamps),
                                                  {.lamps = lamps, .links = lamps % 2, .mixed_loads = true});
        const TransformerCircuit circuit = garden.circuit();
        make_network(circuit, nominal, network);
        same(network, make_network(circuit, nominal));
        set_conditions(network, circuit, cold);
        same(network, make_network(circuit, cold));
    }
}

TEST_CASE("a workspace and a solution serve networks of any size one after the other") {
    Workspace workspace;
    NetworkSolution solution;
    for (const int lamps : {40, 3, 25, 1, 40}) {
        CAPTURE(lamps);
        const Garden garden =
            test::random_garden(static_cast<unsigned>(lamps), {.lamps = lamps, .links = lamps % 2});
        const Network network = make_network(garden.circuit(), nominal);
        REQUIRE(solve(network, workspace, solution));
        CHECK(solution.lamp_volts == solve(network).lamp_volts);
    }
}

TEST_CASE("a solution is carried on with a workspace that has not seen its network") {
    const Network network = make_network(test::random_garden(5, {.links = 1}).circuit(), nominal);
    NetworkSolution solution = solve(network);
    REQUIRE(solution.converged);
    const std::vector<double> before = solution.lamp_volts;
    Workspace fresh;
    REQUIRE(solve_from(network, fresh, solution));
    for (std::size_t i = 0; i < before.size(); ++i)
        CHECK(solution.lamp_volts[i] == Approx(before[i]).margin(1e-9));
}

// Newton's method doubles the correct digits with each step: from 12 V six steps reach the last bit of a
// double where the circuit is not close to its limit.
TEST_CASE("a usual garden takes a handful of steps") {
    for (const bool mixed : {false, true}) {
        CAPTURE(mixed);
        const Network network = make_network(
            test::random_garden(3, {.mixed_loads = mixed, .load_share = 0.3}).circuit(), nominal);
        const NetworkSolution solution = solve(network);
        REQUIRE(solution.converged);
        CHECK(solution.iterations <= 6);
    }
}

//  T --A-- ? -- open -- f     No cable on the first length, no length on the second, then no tap and no
//  model.
TEST_CASE("what is open counts as nothing until it is set") {
    Garden garden;
    garden.cable("c", 0.05).lamp_type("l", {.load = LoadModel::constant_current, .va = 12});
    garden.transformer("T", 100, 0.04, {13}).run("A", "T", 13, "");
    garden.splice("open", "A", 10).fixture("f", "open", 10, "l", "c");
    garden.site.fixtures[0].length.reset();
    const Network network = make_network(garden.circuit(), nominal);
    CHECK(network.ohms == std::vector<double>(3, 0.0));
    CHECK(network.tap == std::vector<double>{13});

    garden.site.runs[0].tap.reset();
    garden.site.transformers[0].model.reset();
    const Network without = make_network(garden.circuit(), nominal);
    CHECK(without.tap == std::vector<double>{0});
    CHECK(without.supply_ratio == 1);
    CHECK(without.regulation_per_va == 0);
}

//  A chain of a thousand filament lamps so overloaded that the last ones hardly glow: Newton's tangents lead
//  below zero volts there.
TEST_CASE("a hopelessly overloaded chain of filament lamps still has its volts") {
    Garden garden;
    garden.cable("c", 0.05).lamp_type("l", {.load = LoadModel::filament, .va = 50});
    garden.ideal_transformer("T").run("A", "T", 12, "c");
    for (int k = 0; k < 1000; ++k)
        garden.fixture("f" + std::to_string(k), k == 0 ? "A" : "f" + std::to_string(k - 1), 1, "l");
    const NetworkSolution solution = solve(make_network(garden.circuit(), nominal));
    REQUIRE(solution.converged);
    CHECK(solution.residual_volts <= kirchhoff_tolerance_volts);
    for (std::size_t i = 1; i < solution.lamp_volts.size(); ++i) {
        CHECK(solution.lamp_volts[i] >= 0);
        CHECK(solution.lamp_volts[i] <= solution.node_volts[i - 1]);
    }
}
