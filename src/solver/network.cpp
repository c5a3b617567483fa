#include "rillwatt/solver/network.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt {

namespace {

double node_ohms(const CircuitNode& node, Celsius temperature) {
    if (node.parent < 0 || !node.cable || !node.length) return 0;
    return cable_ohms(*node.cable, *node.length, temperature);
}

double fixture_lead_ohms(const CircuitNode& node, Celsius temperature) {
    if (!node.fixture || !node.lead_cable) return 0;
    return cable_ohms(*node.lead_cable, node.fixture->lead, temperature);
}

void reserve_nodes(Network& network, std::size_t count) {
    network.feed.reserve(count);
    network.ohms.reserve(count);
    network.lead_ohms.reserve(count);
    network.power.assign(count, 0);
    network.current.assign(count, 0);
    network.conductance.assign(count, 0);
}

void add_nodes(Network& network, const TransformerCircuit& circuit, Celsius temperature) {
    const auto count = circuit.nodes.size();
    reserve_nodes(network, count);
    for (std::size_t i = 0; i < count; ++i) {
        const CircuitNode& node = circuit.nodes[i];
        network.feed.push_back(node.parent >= 0 ? node.parent : static_cast<int>(count) + node.run);
        network.ohms.push_back(node_ohms(node, temperature));
        network.lead_ohms.push_back(fixture_lead_ohms(node, temperature));
        if (node.fixture) add_lamp(network, static_cast<int>(i), *node.fixture);
    }
}

} // namespace

double cable_ohms(const CableType& cable, Metres length, Celsius temperature) {
    return loop_resistance(cable.resistance_at(temperature), length).value();
}

void add_lamp(Network& network, int node, const FixtureType& type) {
    const auto i = static_cast<std::size_t>(node);
    const double va = type.va.value();
    const double rated = type.rated_volts.value();
    switch (type.load) {
    case LoadModel::constant_power:
        network.power[i] = va;
        break;
    case LoadModel::constant_current:
        network.current[i] = va / rated;
        break;
    case LoadModel::resistance:
        network.conductance[i] = va / (rated * rated);
        break;
    case LoadModel::filament:
        network.filaments.push_back({node, va / rated, rated});
        break;
    }
    network.lamps.push_back(node);
}

void set_transformer(Network& network, const TransformerType& type, Volts supply,
                     const OperatingCase& conditions) {
    network.supply_ratio = supply / type.primary_volts * conditions.supply_factor;
    network.regulation_per_va = type.regulation / type.va.value();
}

Network make_network(const TransformerCircuit& circuit, const OperatingCase& conditions) {
    Network network;
    add_nodes(network, circuit, conditions.conductor);
    for (const CircuitRun& run : circuit.runs) {
        network.run_node.push_back(run.node);
        network.tap.push_back(run.tap ? run.tap->value() : 0);
    }
    for (const CircuitLink& link : circuit.links) {
        const bool known = link.cable && link.length;
        network.links.push_back(
            {link.a, link.b, known ? cable_ohms(*link.cable, *link.length, conditions.conductor) : 0});
    }
    if (circuit.type) set_transformer(network, *circuit.type, circuit.supply, conditions);
    return network;
}

std::vector<int> run_of_each_node(const Network& network) {
    const auto count = network.node_count();
    std::vector<int> run(count);
    for (std::size_t i = 0; i < count; ++i) {
        const auto feed = static_cast<std::size_t>(network.feed[i]);
        run[i] = feed >= count ? static_cast<int>(feed - count) : run[feed];
    }
    return run;
}

} // namespace rillwatt
