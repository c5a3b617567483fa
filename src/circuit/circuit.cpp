#include "rillwatt/circuit/circuit.hpp"

#include <algorithm>

namespace rillwatt {

bool TransformerCircuit::complete() const {
    const auto tapped = [](const CircuitRun& run) { return run.tap.has_value(); };
    const auto wired = [](const CircuitNode& node) {
        return node.parent < 0 ||
               (node.cable && node.length && (node.kind != NodeKind::fixture || node.fixture));
    };
    const auto linked = [](const CircuitLink& link) { return link.cable && link.length; };
    return type && std::all_of(runs.begin(), runs.end(), tapped) &&
           std::all_of(nodes.begin(), nodes.end(), wired) && std::all_of(links.begin(), links.end(), linked);
}

const std::string& node_id(const Site& site, const CircuitNode& node) {
    switch (node.kind) {
    case NodeKind::run:
        return site.runs[node.part].id;
    case NodeKind::splice:
        return site.splices[node.part].id;
    case NodeKind::fixture:
        break;
    }
    return site.fixtures[node.part].id;
}

} // namespace rillwatt
