#include "circuit_result.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

/// Volts closer than this are the same: the solver promises no more.
constexpr Volts same_volts{kirchhoff_tolerance_volts};

LampResult lamp_of(const TransformerCircuit& circuit, std::size_t node) {
    const CircuitNode& part = circuit.nodes[node];
    LampResult lamp;
    lamp.fixture = part.part;
    lamp.run = circuit.runs[static_cast<std::size_t>(part.run)].run;
    lamp.transformer = circuit.transformer;
    lamp.node = static_cast<int>(node);
    return lamp;
}

void set_drop(LampResult& lamp, Volts tap) {
    lamp.drop = tap - lamp.volts;
    lamp.drop_ratio = lamp.drop / tap;
}

void add_lamps(const TransformerCircuit& circuit, const Network& network, const NetworkSolution& solution,
               CaseResult& result) {
    for (const int node : network.lamps) {
        const auto i = static_cast<std::size_t>(node);
        const CircuitNode& part = circuit.nodes[i];
        LampResult& lamp = result.lamps.emplace_back(lamp_of(circuit, i));
        lamp.volts = Volts(solution.lamp_volts[i]);
        lamp.splice_volts = Volts(solution.node_volts[i]);
        lamp.amps = Amperes(solution.lamp_amps[i]);
        lamp.va = lamp.volts * lamp.amps;
        if (part.fixture->va > VoltAmperes(0))
            lamp.watts = lamp.va * (part.fixture->watts / part.fixture->va);
        set_drop(lamp, Volts(network.tap[static_cast<std::size_t>(part.run)]));
        result.cable_loss += dissipated(lamp.amps, Ohms(network.lead_ohms[i]));
    }
}

void set_flow(SegmentResult& segment, double amps) {
    segment.amps = Amperes(amps);
    segment.drop = segment.amps * segment.ohms;
    segment.loss = dissipated(segment.amps, segment.ohms);
}

void add_segments(const Site& site, const TransformerCircuit& circuit, const Network& network,
                  const NetworkSolution& solution, CaseResult& result) {
    for (std::size_t i = 0; i < circuit.nodes.size(); ++i) {
        const CircuitNode& node = circuit.nodes[i];
        if (node.parent < 0) continue;
        SegmentResult& segment = result.segments.emplace_back();
        segment.from = node_id(site, circuit.nodes[static_cast<std::size_t>(node.parent)]);
        segment.to = node_id(site, node);
        segment.cable = node.cable->id;
        segment.type = node.cable;
        segment.node = static_cast<int>(i);
        segment.transformer = circuit.transformer;
        segment.run = circuit.runs[static_cast<std::size_t>(node.run)].run;
        segment.length = *node.length;
        segment.ohms = Ohms(network.ohms[i]);
        set_flow(segment, solution.branch_amps[i]);
        result.cable_loss += segment.loss;
    }
}

void add_links(const Site& site, const TransformerCircuit& circuit, const Network& network,
               const NetworkSolution& solution, CaseResult& result) {
    for (std::size_t k = 0; k < circuit.links.size(); ++k) {
        const CircuitLink& link = circuit.links[k];
        const CircuitNode& a = circuit.nodes[static_cast<std::size_t>(link.a)];
        SegmentResult& segment = result.segments.emplace_back();
        segment.from = node_id(site, a);
        segment.to = node_id(site, circuit.nodes[static_cast<std::size_t>(link.b)]);
        segment.link = site.links[link.link].id;
        segment.circuit_link = static_cast<int>(k);
        segment.cable = link.cable->id;
        segment.type = link.cable;
        segment.transformer = circuit.transformer;
        segment.run = circuit.runs[static_cast<std::size_t>(a.run)].run;
        segment.length = *link.length;
        segment.ohms = Ohms(network.links[k].ohms);
        set_flow(segment, solution.link_amps[k]);
        result.cable_loss += segment.loss;
    }
}

/// The lowest lamp of each run; of those equally low the first in the file.
void find_worst_lamps(const TransformerCircuit& circuit, const Network& network,
                      const NetworkSolution& solution, std::vector<RunResult>& runs) {
    for (const int node : network.lamps) {
        const CircuitNode& part = circuit.nodes[static_cast<std::size_t>(node)];
        RunResult& run = runs[static_cast<std::size_t>(part.run)];
        const Volts volts(solution.lamp_volts[static_cast<std::size_t>(node)]);
        const bool lower = !run.worst_fixture || volts < run.worst_volts - same_volts;
        const bool tie = !lower && volts < run.worst_volts + same_volts && part.part < *run.worst_fixture;
        if (!lower && !tie) continue;
        run.worst_fixture = part.part;
        run.worst_volts = volts;
    }
}

std::vector<RunResult> runs_of(const TransformerCircuit& circuit, const Network& network,
                               const NetworkSolution& solution) {
    std::vector<RunResult> runs;
    for (std::size_t q = 0; q < circuit.runs.size(); ++q)
        runs.push_back({circuit.runs[q].run,
                        circuit.transformer,
                        Volts(network.tap[q]),
                        Volts(solution.run_volts[q]),
                        Amperes(solution.run_amps[q]),
                        {},
                        {}});
    find_worst_lamps(circuit, network, solution, runs);
    return runs;
}

/// Load, primary current and winding loss, as the methods page defines them.
TransformerResult transformer_of(const TransformerCircuit& circuit, const Network& network,
                                 const std::vector<RunResult>& runs) {
    TransformerResult total;
    total.transformer = circuit.transformer;
    total.no_load = circuit.type->no_load;
    Watts primary = circuit.type->no_load;
    for (const RunResult& run : runs) {
        total.load += run.volts * run.amps;
        primary += run.tap * run.amps * PowerFactor(1);
        total.winding_loss += (run.tap * network.supply_ratio - run.volts) * run.amps * PowerFactor(1);
    }
    total.loading = total.load / circuit.type->va;
    total.primary_amps = primary / (circuit.type->primary_volts * PowerFactor(1));
    return total;
}

/// Place of each lamp of the network among the site's fixtures.
std::vector<std::size_t> fixture_order(const TransformerCircuit& circuit, const Network& network) {
    std::vector<std::size_t> order;
    for (const int node : network.lamps)
        order.push_back(circuit.nodes[static_cast<std::size_t>(node)].part);
    return order;
}

} // namespace

void add_circuit_result(const Site& site, const TransformerCircuit& circuit, const Network& network,
                        const NetworkSolution& solution, CaseResult& result, CircuitResult& beside) {
    beside.nodes.resize(circuit.nodes.size());
    for (std::size_t i = 0; i < circuit.nodes.size(); ++i)
        beside.nodes[i].volts = Volts(solution.node_volts[i]);
    const std::vector<RunResult> runs = runs_of(circuit, network, solution);
    result.transformers.push_back(transformer_of(circuit, network, runs));
    result.runs.insert(result.runs.end(), runs.begin(), runs.end());
    add_lamps(circuit, network, solution, result);
    add_segments(site, circuit, network, solution, result);
    add_links(site, circuit, network, solution, result);
}

void add_open_circuit_result(const TransformerCircuit& circuit, const Network& network, CaseResult& result,
                             CircuitResult& beside) {
    const auto tap_of = [&](std::size_t node) {
        return Volts(network.tap[static_cast<std::size_t>(circuit.nodes[node].run)]);
    };
    beside.nodes.resize(circuit.nodes.size());
    for (std::size_t i = 0; i < circuit.nodes.size(); ++i)
        beside.nodes[i].volts = tap_of(i) * network.supply_ratio;
    for (const int node : network.lamps) {
        const auto i = static_cast<std::size_t>(node);
        LampResult& lamp = result.lamps.emplace_back(lamp_of(circuit, i));
        lamp.volts = lamp.splice_volts = *beside.nodes[i].volts;
        set_drop(lamp, tap_of(i));
    }
}

NoOperatingPoint no_operating_point(const TransformerCircuit& circuit, const Network& network) {
    const LoadLimit limit = find_load_limit(network, fixture_order(circuit, network));
    const CircuitNode& node = circuit.nodes[static_cast<std::size_t>(limit.node)];
    return {circuit.transformer, circuit.runs[static_cast<std::size_t>(limit.run)].run, node.part,
            limit.share};
}

} // namespace rillwatt
