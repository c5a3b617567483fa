#include "rillwatt/plan/solved_circuit.hpp"

#include <numeric>

namespace rillwatt {

namespace {

template<class Result>
const Result* at(const std::vector<Result>& results, int place) {
    return place < 0 ? nullptr : &results[static_cast<std::size_t>(place)];
}

SolvedCircuit solved_circuit(const TransformerCircuit& written, const CircuitResult& beside,
                             const CaseResult& result) {
    SolvedCircuit circuit;
    circuit.circuit = &written;
    circuit.transformer = at(result.transformers, beside.transformer);
    circuit.unsolved = at(result.unsolved, beside.unsolved);
    circuit.nodes.reserve(beside.nodes.size());
    for (const NodeResult& node : beside.nodes)
        circuit.nodes.push_back({node.volts, at(result.segments, node.segment), at(result.lamps, node.lamp),
                                 at(result.runs, node.run)});
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
    const std::vector<TransformerCircuit>& written = assessment.circuits.transformers;
    std::vector<SolvedCircuit> circuits;
    circuits.reserve(written.size());
    for (std::size_t i = 0; i < written.size(); ++i)
        circuits.push_back(solved_circuit(written[i], result.circuits[i], result));
    return circuits;
}

} // namespace rillwatt
