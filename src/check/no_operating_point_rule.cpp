#include "rillwatt/finding/command_word.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"

namespace rillwatt {

namespace {

Finding describe(const RuleContext& context, const CaseResult& result, const NoOperatingPoint& stop) {
    const Run& run = context.site.runs[stop.run];
    const Fixture& fixture = context.site.fixtures[stop.fixture];
    return {.part = run.id,
            .location = run.location,
            .message = fmt::format(
                "run {} cannot feed its lamps in the {} case: the lamps ask for more than the cable "
                "can carry; {} gives way first, and only {} % of the load would work",
                run.id, result.conditions.name, fixture.id, fixed_text(stop.carried_share * 100, 1)),
            .hint = fmt::format("much thicker cable, or split the run; `rillwatt size {} --all{}` chooses",
                                command_word(context.site.file),
                                result.conditions.name == "nominal" ? "" : " --weak-supply")};
}

std::vector<Finding> find(const RuleContext& context) {
    std::vector<Finding> findings;
    std::vector<bool> told(context.site.transformers.size(), false);
    for (const CaseResult& result : context.solution.cases) {
        const bool nominal = result.conditions.name == "nominal";
        for (const NoOperatingPoint& stop : result.unsolved) {
            if (told[stop.transformer]) continue;
            told[stop.transformer] = true;
            findings.push_back(describe(context, result, stop));
            findings.back().severity = nominal ? Severity::error : Severity::warning;
        }
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
