#include "node_results.hpp"

namespace rillwatt {

namespace {

/// The place of each part's result in a list, -1 for none.
template<class Result>
std::vector<int> places(const std::vector<Result>& results, std::size_t parts, std::size_t Result::*part) {
    std::vector<int> place(parts, -1);
    for (std::size_t i = 0; i < results.size(); ++i)
        place[results[i].*part] = static_cast<int>(i);
    return place;
}

/// Where the parts of a case's circuits stand in its lists.
struct Places {
    std::vector<int> lamps; // by fixture
    std::vector<int> runs;  // by run
    std::vector<int> transformers;
    std::vector<int> unsolved; // by transformer
};

Places places_of(const Site& site, const CaseResult& result) {
    const std::size_t transformers = site.transformers.size();
    return {places(result.lamps, site.fixtures.size(), &LampResult::fixture),
            places(result.runs, site.runs.size(), &RunResult::run),
            places(result.transformers, transformers, &TransformerResult::transformer),
            places(result.unsolved, transformers, &NoOperatingPoint::transformer)};
}

void put_parts(const TransformerCircuit& circuit, const Places& place, CircuitResult& found) {
    found.nodes.resize(circuit.nodes.size());
    for (std::size_t i = 0; i < circuit.nodes.size(); ++i) {
        const CircuitNode& node = circuit.nodes[i];
        if (node.kind == NodeKind::run) found.nodes[i].run = place.runs[node.part];
        if (node.kind == NodeKind::fixture) found.nodes[i].lamp = place.lamps[node.part];
    }
    found.transformer = place.transformers[circuit.transformer];
    found.unsolved = place.unsolved[circuit.transformer];
}

/// The lengths of the tree, each at the node that it leads to.
void put_segments(const SiteCircuits& circuits, const Site& site, CaseResult& result) {
    std::vector<std::size_t> circuit_of(site.transformers.size());
    for (std::size_t c = 0; c < circuits.transformers.size(); ++c)
        circuit_of[circuits.transformers[c].transformer] = c;
    for (std::size_t i = 0; i < result.segments.size(); ++i) {
        const SegmentResult& segment = result.segments[i];
        if (segment.node < 0) continue; // a link
        CircuitResult& circuit = result.circuits[circuit_of[segment.transformer]];
        circuit.nodes[static_cast<std::size_t>(segment.node)].segment = static_cast<int>(i);
    }
}

} // namespace

void put_beside_nodes(const Site& site, const SiteCircuits& circuits, CaseResult& result) {
    const Places place = places_of(site, result);
    for (std::size_t c = 0; c < circuits.transformers.size(); ++c)
        put_parts(circuits.transformers[c], place, result.circuits[c]);
    put_segments(circuits, site, result);
}

} // namespace rillwatt
