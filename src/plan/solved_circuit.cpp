#include "rillwatt/plan/solved_circuit.hpp"

#include <numeric>

namespace rillwatt {

namespace {

/// What a case found, by the part it was found for.
struct Found {
    std::vector<std::vector<const SegmentResult*>>
        segments;                         // by transformer, then by the node a length leads to
    std::vector<const LampResult*> lamps; // by fixture
    std::vector<const RunResult*> runs;   // by run
};

Found index_results(const Assessment& assessment, const CaseResult& result) {
    Found found;
    found.segments.resize(assessment.site->transformers.size());
    for (const TransformerCircuit& circuit : assessment.circuits.transformers)
        found.segments[circuit.transformer].resize(circuit.nodes.size());
    for (const SegmentResult& segment : result.segments)
        if (segment.node >= 0)
            found.segments[segment.transformer][static_cast<std::size_t>(segment.node)] = &segment;
    found.lamps.resize(assessment.site->fixtures.size());
    for (const LampResult& lamp : result.lamps)
        found.lamps[lamp.fixture] = &lamp;
    found.runs.resize(assessment.site->runs.size());
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

SolvedNode solve_node(const TransformerCircuit& circuit, std::size_t number, const Found& found) {
    const CircuitNode& written = circuit.nodes[number];
    SolvedNode node;
    if (written.kind == NodeKind::run) {
        node.run = found.runs[written.part];
        return node;
    }
    node.segment = found.segments[circuit.transformer][number];
    if (written.kind == NodeKind::fixture) node.lamp = found.lamps[written.part];
    return node;
}

SolvedCircuit solve_circuit(const TransformerCircuit& written, const Found& found) {
    SolvedCircuit circuit;
    circuit.circuit = &written;
    circuit.nodes.reserve(written.nodes.size());
    for (std::size_t i = 0; i < written.nodes.size(); ++i) {
        circuit.nodes.push_back(solve_node(written, i, found));
        circuit.nodes.back().volts = cable_volts(circuit.nodes.back(), written.nodes[i], circuit);
    }
    circuit.set_fed();
    return circuit;
}

} // namespace

void SolvedCircuit::set_fed() {
    fed_from_.assign(nodes.size() + 1, 0);
    for (const CircuitNode& node : circuit->nodes)
        if (node.parent >= 0) ++fed_from_[static_cast<std::size_t>(node.parent) + 1];
    std::partial_sum(fed_from_.begin(), fed_from_.end(), fed_from_.begin());
    fed_.resize(fed_from_.back());
    std::vector<std::size_t> next = fed_from_;
    for (std::size_t i = 0; i < nodes.size(); ++i)
        if (const int parent = circuit->nodes[i].parent; parent >= 0)
            fed_[next[static_cast<std::size_t>(parent)]++] = static_cast<int>(i);
}

std::vector<SolvedCircuit> solved_circuits(const Assessment& assessment, const CaseResult& result) {
    const Found found = index_results(assessment, result);
    std::vector<SolvedCircuit> circuits;
    for (const TransformerCircuit& written : assessment.circuits.transformers) {
        circuits.push_back(solve_circuit(written, found));
        for (const TransformerResult& transformer : result.transformers)
            if (transformer.transformer == written.transformer) circuits.back().transformer = &transformer;
        for (const NoOperatingPoint& point : result.unsolved)
            if (point.transformer == written.transformer) circuits.back().unsolved = &point;
    }
    return circuits;
}

} // namespace rillwatt
