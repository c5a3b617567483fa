#include "rillwatt/finding/command_word.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"

namespace rillwatt {

namespace {

Finding describe(const RuleContext& context, const Breach& breach) {
    const TransformerCircuit& circuit = context.circuits.transformers[breach.transformer];
    const Part& run = part_of(context.site, circuit, breach);
    const std::string& lamp = node_id(context.site, circuit.nodes[static_cast<std::size_t>(breach.node)]);
    return {.severity = severity_of(breach),
            .part = run.id,
            .location = run.location,
            .message = fmt::format(
                "run {} cannot feed its lamps in the {} case: the lamps ask for more than the cable "
                "can carry; {} gives way first, and only {} % of the load would work",
                run.id, context.solution.cases[breach.operating_case].conditions.name, lamp,
                fixed_text(breach.value * 100, 1)),
            .hint = fmt::format("much thicker cable, or split the run; `rillwatt size {} --all{}` chooses",
                                command_word(context.site.file),
                                severity_of(breach) == Severity::error ? "" : " --weak-supply")};
}

/// One finding for each transformer: of the first case that has no operating point.
std::vector<Finding> find(const RuleContext& context) {
    std::vector<Finding> findings;
    std::vector<bool> told(context.site.transformers.size(), false);
    for (const Breach& breach : context.breaches) {
        if (breach.kind != BreachKind::no_operating_point || told[breach.transformer]) continue;
        told[breach.transformer] = true;
        findings.push_back(describe(context, breach));
    }
    return findings;
}

} // namespace

Rule no_operating_point_rule() {
    return {.id = "no-operating-point",
            .group = RuleGroup::low_voltage,
            .severity = "error in the nominal case, warning in the weak case",
            .summary = "A circuit cannot deliver what its lamps ask for at any voltage",
            .explanation =
                "A constant-power lamp draws more current as its voltage falls, which makes the voltage "
                "fall further. Behind too much resistance there is no balance: the lamps start, brown out "
                "and start again. For one lamp the limit is V^2 / 4R.",
            .source = "circuit theory: greatest power through a resistance, V^2 / 4R",
            .find = find};
}

} // namespace rillwatt
