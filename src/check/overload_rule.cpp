#include "rillwatt/limits/limits.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include <map>
#include <utility>

namespace rillwatt {

namespace {

const TransformerCircuit& circuit_of(const RuleContext& context, const Breach& breach) {
    return context.circuits.transformers[breach.transformer];
}

/// The two ends of an overloaded length and its cable.
struct Length {
    int from = 0;
    int to = 0;
    const CableType* cable = nullptr;
};

Length length_of(const TransformerCircuit& circuit, const Breach& breach) {
    if (breach.link >= 0) {
        const CircuitLink& link = circuit.links[static_cast<std::size_t>(breach.link)];
        return {link.a, link.b, link.cable};
    }
    const CircuitNode& node = circuit.nodes[static_cast<std::size_t>(breach.node)];
    return {node.parent, breach.node, node.cable};
}

Finding cable_finding(const RuleContext& context, const Breach& breach, const Length& length) {
    const TransformerCircuit& circuit = circuit_of(context, breach);
    const Part& part = part_of(context.site, circuit, breach);
    const auto name = [&](int node) {
        return node_id(context.site, circuit.nodes[static_cast<std::size_t>(node)]);
    };
    return {.severity = severity_of(breach),
            .part = part.id,
            .location = part.location,
            .message = fmt::format("the {} cable from {} to {} carries {} A, its ampacity is {} A",
                                   length.cable->id, name(length.from), name(length.to),
                                   fixed_text(breach.value, 2), trimmed_text(breach.limit, 2)),
            .hint = "a thicker cable from the transformer on, or two runs"};
}

std::vector<Finding> find_cable(const RuleContext& context) {
    std::vector<Finding> findings;
    std::map<std::pair<std::size_t, int>, const CableType*> overloaded; // the lengths of the tree
    for (const Breach& breach : context.breaches) {
        if (breach.kind != BreachKind::cable) continue;
        const Length length = length_of(circuit_of(context, breach), breach);
        if (breach.link < 0) {
            overloaded[{breach.transformer, length.to}] = length.cable;
            const auto feed = overloaded.find({breach.transformer, length.from});
            // the length that feeds it says so already
            if (feed != overloaded.end() && feed->second == length.cable) continue;
        }
        findings.push_back(cable_finding(context, breach, length));
    }
    return findings;
}

std::vector<Finding> find_secondary(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const Breach& breach : context.breaches) {
        if (breach.kind != BreachKind::secondary) continue;
        const Part& run = part_of(context.site, circuit_of(context, breach), breach);
        findings.push_back(
            {.severity = severity_of(breach),
             .part = run.id,
             .location = run.location,
             .message = fmt::format("run {} draws {} A, more than the {} A one output of {} may give", run.id,
                                    fixed_text(breach.value, 2), trimmed_text(breach.limit, 2),
                                    circuit_of(context, breach).type->id),
             .hint = "split the run in two"});
    }
    return findings;
}

Finding load_finding(const RuleContext& context, const Breach& breach) {
    const TransformerType& type = *circuit_of(context, breach).type;
    const Part& transformer = part_of(context.site, circuit_of(context, breach), breach);
    return {.severity = severity_of(breach),
            .part = transformer.id,
            .location = transformer.location,
            .message = fmt::format("transformer {} carries {} VA of its {} VA, {} %", transformer.id,
                                   fixed_text((breach.value * type.va).value(), 1),
                                   trimmed_text(type.va.value(), 1), fixed_text(breach.value * 100, 1)),
            .hint = "a larger transformer, or move a run to another one"};
}

std::vector<Finding> find_loading(const RuleContext& context, Severity severity) {
    std::vector<Finding> findings;
    for (const Breach& breach : context.breaches)
        if (breach.kind == BreachKind::loading && severity_of(breach) == severity)
            findings.push_back(load_finding(context, breach));
    return findings;
}

std::vector<Finding> find_overloaded_transformer(const RuleContext& context) {
    return find_loading(context, Severity::error);
}

std::vector<Finding> find_margin(const RuleContext& context) {
    return find_loading(context, Severity::warning);
}

} // namespace

Rule cable_overloaded_rule() {
    return {.id = "cable-overloaded",
            .group = RuleGroup::low_voltage,
            .severity = "error",
            .summary = "A cable carries more than its ampacity",
            .explanation =
                "Copper that carries too much current heats its insulation. Each length is judged on its "
                "own current; of a chain of overloaded lengths of one cable the first is named.",
            .source = limits::ampacity_source,
            .find = find_cable};
}

Rule secondary_overloaded_rule() {
    return {.id = "secondary-overloaded",
            .group = RuleGroup::low_voltage,
            .severity = "error",
            .summary = "A run draws more than one output of its transformer may give",
            .explanation =
                "Every output of a low-voltage lighting supply is limited, to 25 A unless its nameplate "
                "says less. Split the run over two outputs.",
            .source = limits::secondary_source,
            .find = find_secondary};
}

Rule transformer_overloaded_rule() {
    return {.id = "transformer-overloaded",
            .group = RuleGroup::low_voltage,
            .severity = "error",
            .summary = "A transformer carries more than its nameplate",
            .explanation =
                "The load is what the runs draw at their heads, cable losses included, in volt-amperes.",
            .source = limits::transformer_rating.source,
            .find = find_overloaded_transformer};
}

Rule transformer_margin_rule() {
    return {.id = "transformer-margin",
            .group = RuleGroup::low_voltage,
            .severity = "warning",
            .summary = "A transformer is loaded beyond 80 %",
            .explanation =
                "It works, but runs hot and leaves no room for the two lights that come next year.",
            .source = limits::transformer_margin.source,
            .find = find_margin};
}

} // namespace rillwatt
