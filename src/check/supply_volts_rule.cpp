#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include "mains_finding.hpp"

namespace rillwatt {

namespace {

std::string supply_words(const Site& site, const Transformer& transformer, Volts supply) {
    const auto* branch = circuit_named(site, transformer.circuit);
    if (branch != nullptr) return fmt::format("{} has {}", branch->id, nominal_volts_text(supply));
    return fmt::format("the site's supply is {}", nominal_volts_text(supply));
}

Finding describe(const RuleContext& context, const Breach& breach) {
    const TransformerCircuit& circuit = context.circuits.transformers[breach.transformer];
    const Transformer& transformer = context.site.transformers[circuit.transformer];
    const double times = breach.value / breach.limit;
    return finding_about(
        context, transformer, severity_of(breach),
        fmt::format("transformer {} ({}) is made for {}, {}: every tap shows {} times its volts",
                    transformer.id, circuit.type->id, nominal_volts_text(Volts(breach.limit)),
                    supply_words(context.site, transformer, Volts(breach.value)), trimmed_text(times, 2)),
        "a circuit of its volts, or a transformer for this supply; sizing chooses one when `model` is left "
        "out",
        code_limits::nameplate);
}

std::vector<Finding> find(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const Breach& breach : context.breaches)
        if (breach.kind == BreachKind::supply) findings.push_back(describe(context, breach));
    return findings;
}

} // namespace

Rule supply_volts_rule() {
    return {.id = "supply-volts",
            .group = RuleGroup::low_voltage,
            .severity = "error",
            .summary = "A transformer hangs on a circuit of other volts than it is made for",
            .explanation =
                "110 to 120 V belong together, and 220 to 240 V; any other supply may be 5 % off the primary "
                "volts of the nameplate. A transformer for 120 V on 240 V gives twice the volts of each tap, "
                "in water too, and does not last.",
            .source = [] { return source_of_all_editions(code_limits::nameplate); },
            .find = find};
}

} // namespace rillwatt
