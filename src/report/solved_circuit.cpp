#include "solved_circuit.hpp"

#include <string_view>
#include <unordered_map>

namespace rillwatt {

namespace {

/// What a case found, by the part it was found for.
struct Found {
    std::unordered_map<std::string_view, const SegmentResult*> segments; // by the part a tree length leads to
    std::vector<const LampResult*> lamps;                                // by fixture
    std::vector<const RunResult*> runs;                                  // by run
};

Found index_results(const Site& site, const CaseResult& result) {
    Found found;
    found.segments.reserve(result.segments.size());
    for (const SegmentResult& segment : result.segments)
        if (segment.link.empty()) found.segments.emplace(segment.to, &segment);
    found.lamps.resize(site.fixtures.size());
    for (const LampResult& lamp : result.lamps)
        found.lamps[lamp.fixture] = &lamp;
    found.runs.resize(site.runs.size());
    for (const RunResult& run : result.runs)
        found.runs[run.run] = &run;
    return found;
}

std::optional<Volts> cable_volts(const SolvedNode& node, const CircuitNode& written,
                                 const SolvedCircuit& circuit) {
    if (node.run != nullptr) return node.run->volts;
    if (node.lamp != nullptr) return node.lamp->splice_volts;
    if (node.segment == nullptr || written.parent < 0) return std::nullopt;
    const std::optional<Volts> feed = circuit.nodes[static_cast<std::size_t>(written.parent)].volts;
    return feed ? std::optional(*feed - node.segment->drop) : std::nullopt;
}

SolvedNode solve_node(const Site& site, const CircuitNode& written, const Found& found) {
    SolvedNode node;
    if (written.kind == NodeKind::run) {
        node.run = found.runs[written.part];
        return node;
    }
    const auto segment = found.segments.find(node_id(site, written));
    if (segment != found.segments.end()) node.segment = segment->second;
    if (written.kind == NodeKind::fixture) node.lamp = found.lamps[written.part];
    return node;
}

SolvedCircuit solve_circuit(const Site& site, const TransformerCircuit& written, const Found& found) {
    SolvedCircuit circuit;
    circuit.circuit = &written;
    circuit.nodes.reserve(written.nodes.size());
    for (std::size_t i = 0; i < written.nodes.size(); ++i) {
        const CircuitNode& node = written.nodes[i];
        circuit.nodes.push_back(solve_node(site, node, found));
        circuit.nodes.back().volts = cable_volts(circuit.nodes.back(), node, circuit);
        if (node.parent >= 0)
            circuit.nodes[static_cast<std::size_t>(node.parent)].children.push_back(static_cast<int>(i));
    }
    return circuit;
}

} // namespace

std::vector<SolvedCircuit> solved_circuits(const Assessment& assessment, const CaseResult& result) {
    const Found found = index_results(*assessment.site, result);
    std::vector<SolvedCircuit> circuits;
    for (const TransformerCircuit& written : assessment.circuits.transformers) {
        circuits.push_back(solve_circuit(*assessment.site, written, found));
        for (const TransformerResult& transformer : result.transformers)
            if (transformer.transformer == written.transformer) circuits.back().transformer = &transformer;
        for (const NoOperatingPoint& point : result.unsolved)
            if (point.transformer == written.transformer) circuits.back().unsolved = &point;
    }
    return circuits;
}

} // namespace rillwatt
