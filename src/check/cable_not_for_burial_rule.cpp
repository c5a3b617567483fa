#include "rillwatt/limits/limits.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include <set>

namespace rillwatt {

namespace {

const Part& part_of(const Site& site, const CircuitNode& node) {
    if (node.kind == NodeKind::run) return site.runs[node.part];
    if (node.kind == NodeKind::splice) return site.splices[node.part];
    return site.fixtures[node.part];
}

/// The part that names the cable of a length: itself, or the nearest one towards the transformer that does.
const CircuitNode& naming_node(const TransformerCircuit& circuit, const CircuitNode& node) {
    const CircuitNode* at = &node;
    while (!at->own_cable && at->parent >= 0)
        at = &circuit.nodes[static_cast<std::size_t>(at->parent)];
    return *at;
}

Finding describe(const Part& part, const std::string& cable) {
    return {.severity = Severity::error,
            .part = part.id,
            .location = part.location,
            .message = fmt::format("{} uses {} cable, which the catalog does not list for direct burial",
                                   part.id, cable),
            .hint = "a cable identified for direct burial"};
}

std::vector<Finding> find(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const TransformerCircuit& circuit : context.circuits.transformers) {
        std::set<const CircuitNode*> told;
        for (const CircuitNode& node : circuit.nodes) {
            if (node.kind == NodeKind::run || node.cable == nullptr || node.cable->direct_burial) continue;
            const CircuitNode& naming = naming_node(circuit, node);
            if (told.insert(&naming).second)
                findings.push_back(describe(part_of(context.site, naming), node.cable->id));
        }
        for (const CircuitLink& link : circuit.links)
            if (link.cable != nullptr && !link.cable->direct_burial)
                findings.push_back(describe(context.site.links[link.link], link.cable->id));
    }
    return findings;
}

} // namespace

Rule cable_not_for_burial_rule() {
    return {.id = "cable-not-for-burial",
            .group = RuleGroup::low_voltage,
            .severity = "error",
            .summary = "A buried length uses a cable that is not for direct burial",
            .explanation =
                "Every length between parts counts as buried; fixtures' own leads do not. The finding names "
                "the part that chose the cable, once for all lengths that take it from there.",
            .source = limits::burial_source,
            .find = find};
}

} // namespace rillwatt
