#include "rillwatt/solver/network.hpp"

#include "rillwatt/circuit/lamp_load.hpp"

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

void clear(Network& network, std::size_t count) {
    network.feed.resize(count);
    network.ohms.resize(count);
    network.lead_ohms.resize(count);
    for (std::vector<double>* loads : {&network.power, &network.current, &network.conductance})
        loads->assign(count, 0);
    network.filaments.clear();
    network.lamps.clear();
    network.run_node.clear();
    network.tap.clear();
    network.links.clear();
    network.supply_ratio = 1;
    network.regulation_per_va = 0;
}

} // namespace

double cable_ohms(const CableType& cable, Metres length, Celsius temperature) {
    return loop_resistance(cable.resistance_at(temperature), length).value();
}

void add_lamp(Network& network, int node, const FixtureType& type) {
    const auto i = static_cast<std::size_t>(node);
    const LampLoad lamp = lamp_load(type, 0);
    const LoadColumns load = load_columns(lamp);
    network.power[i] = load.power;
    network.current[i] = load.current;
    network.conductance[i] = load.conductance;
    if (lamp.model == LoadModel::filament) network.filaments.push_back({node, load.filament, lamp.rated});
    network.lamps.push_back(node);
}

void set_transformer(Network& network, const TransformerType& type, Volts supply,
                     const OperatingCase& conditions) {
    network.supply_ratio = supply / type.primary_volts * conditions.supply_factor;
    network.regulation_per_va = type.regulation / type.va.value();
}

void set_conditions(Network& network, const TransformerCircuit& circuit, const OperatingCase& conditions) {
    for (std::size_t i = 0; i < circuit.nodes.size(); ++i) {
        network.ohms[i] = node_ohms(circuit.nodes[i], conditions.conductor);
        network.lead_ohms[i] = fixture_lead_ohms(circuit.nodes[i], conditions.conductor);
    }
    for (std::size_t k = 0; k < circuit.links.size(); ++k) {
        const CircuitLink& link = circuit.links[k];
        const bool known = link.cable && link.length;
        network.links[k].ohms = known ? cable_ohms(*link.cable, *link.length, conditions.conductor) : 0;
    }
    if (circuit.type) set_transformer(network, *circuit.type, circuit.supply, conditions);
}

void make_network(const TransformerCircuit& circuit, const OperatingCase& conditions, Network& network) {
    const auto count = circuit.nodes.size();
    clear(network, count);
    for (std::size_t i = 0; i < count; ++i) {
        const CircuitNode& node = circuit.nodes[i];
        network.feed[i] = node.parent >= 0 ? node.parent : static_cast<int>(count) + node.run;
        if (node.fixture) add_lamp(network, static_cast<int>(i), *node.fixture);
    }
    for (const CircuitRun& run : circuit.runs) {
        network.run_node.push_back(run.node);
        network.tap.push_back(run.tap ? run.tap->value() : 0);
    }
    for (const CircuitLink& link : circuit.links)
        network.links.push_back({link.a, link.b, 0});
    set_conditions(network, circuit, conditions);
}

Network make_network(const TransformerCircuit& circuit, const OperatingCase& conditions) {
    Network network;
    make_network(circuit, conditions, network);
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
