#include "rillwatt/quantity/figure_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"

namespace rillwatt {

namespace {

const CircuitRun& run_of(const TransformerCircuit& circuit, int node) {
    const int run = circuit.nodes[static_cast<std::size_t>(node)].run;
    return circuit.runs[static_cast<std::size_t>(run)];
}

std::vector<Finding> find(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const auto& circuit : context.circuits.transformers) {
        for (const CircuitLink& link : circuit.links) {
            const CircuitRun& a = run_of(circuit, link.a);
            const CircuitRun& b = run_of(circuit, link.b);
            if (!a.tap || !b.tap || *a.tap == *b.tap) continue;
            const Link& written = context.site.links[link.link];
            findings.push_back(
                {.severity = Severity::error,
                 .part = written.id,
                 .location = written.location,
                 .message = fmt::format("link {} joins run {} on the {} tap with run {} on the {} tap: the "
                                        "two taps drive a current through their cables whatever the lamps do",
                                        written.id, context.site.runs[a.run].id, nominal_volts_text(*a.tap),
                                        context.site.runs[b.run].id, nominal_volts_text(*b.tap)),
                 .hint = "both runs on the same tap, or no link between them"});
        }
    }
    return findings;
}

} // namespace

Rule taps_joined_rule() {
    return {.id = "taps-joined",
            .group = RuleGroup::low_voltage,
            .severity = "error",
            .summary = "A link joins two runs on different taps",
            .explanation =
                "A ring may close between runs on one tap. Between different taps the difference of their "
                "volts meets nothing but the cable: at worst a short circuit of the transformer.",
            .source = "Kirchhoff's laws",
            .find = find};
}

} // namespace rillwatt
