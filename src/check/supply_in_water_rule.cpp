#include "rillwatt/layout/places.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include "mains_finding.hpp"

namespace rillwatt {

namespace {

/// The water a part stands in; null where it does not or nobody knows.
const Area* water_around(const RuleContext& context, const std::optional<PlanPoint>& at) {
    return at ? context.areas.water_at(*at) : nullptr;
}

std::vector<Finding> find(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const Transformer& transformer : context.site.transformers)
        if (const Area* water = water_around(context, transformer.at))
            findings.push_back(
                finding_about(context, transformer, Severity::error,
                              fmt::format("transformer {} stands in {}: its supply is line voltage",
                                          transformer.id, water->id),
                              "move it out of the water; being listed for water is about the lights it "
                              "feeds, not about where it stands",
                              common_practice));
    for (const BranchCircuit& branch : context.site.circuits)
        if (const Area* water = water_around(context, branch.at))
            findings.push_back(finding_about(
                context, branch, Severity::error,
                fmt::format("the outlet of {} stands in {}: it is line voltage", branch.id, water->id),
                "move it out of the water", common_practice));
    return findings;
}

} // namespace

Rule supply_in_water_rule() {
    return {
        .id = "supply-in-water",
        .group = RuleGroup::mains,
        .severity = "error",
        .summary = "A transformer or an outlet stands in water",
        .explanation =
            "Line voltage has no place in the water of a garden but inside a pump or a light made for it. "
            "A transformer is listed for the lights it may feed in water, not to stand there.",
        .source = common_practice.practice,
        .find = find};
}

} // namespace rillwatt
