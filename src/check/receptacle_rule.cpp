#include "rillwatt/layout/places.hpp"
#include "rillwatt/mains/code_limits.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include "mains_finding.hpp"

namespace rillwatt {

namespace {

std::vector<Finding> find_cover(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const auto& branch : context.site.circuits) {
        if (branch.outlet != Outlet::receptacle || !branch.outdoors || branch.wet_cover) continue;
        findings.push_back(finding_about(
            context, branch, Severity::warning,
            fmt::format("the outdoor receptacle of {} has no cover that stays weatherproof with the plug in",
                        branch.id),
            "an in-use cover marked extra-duty and a weather-resistant receptacle; then `wet_cover = true`",
            code_limits::wet_location_cover));
    }
    return findings;
}

std::vector<Finding> find_near_water(const RuleContext& context) {
    std::vector<Finding> findings;
    const auto& limit = code_limits::receptacle_to_water;
    if (!context.areas.has_water()) return findings; // no water on the plan
    for (const auto& branch : context.site.circuits) {
        if (branch.outlet != Outlet::receptacle) continue;
        if (!branch.at) {
            findings.push_back(cannot_judge(context, branch, "its outlet is not on the plan", "`at = [x, y]`",
                                            limit.source));
            continue;
        }
        const Metres away = *context.areas.distance_to_water(*branch.at);
        if (away >= limit.value - plan_slack) continue;
        findings.push_back(finding_about(
            context, branch, Severity::warning,
            fmt::format("the receptacle of {} is {} from the water, nearer than {}", branch.id,
                        length_in(context, away), length_in(context, limit.value)),
            "move it away from the water, or wire the pump without a receptacle", limit.source));
    }
    return findings;
}

} // namespace

Rule receptacle_cover_rule() {
    return {.id = "receptacle-cover",
            .group = RuleGroup::mains,
            .severity = "warning",
            .summary = "An outdoor receptacle has no in-use cover",
            .explanation =
                "A pump stays plugged in all year: the cover must be weatherproof with the plug in, the "
                "receptacle of the weather-resistant type.",
            .source = [] { return source_of_all_editions(code_limits::wet_location_cover); },
            .find = find_cover};
}

Rule receptacle_near_water_rule() {
    return {.id = "receptacle-near-water",
            .group = RuleGroup::mains,
            .severity = "warning",
            .summary = "A receptacle is nearer than 6 ft to water",
            .explanation =
                "The distance is that of pools; it reaches fountains only where they share water with a "
                "pool. Elsewhere it is common practice: what can fall in, will.",
            .source =
                [] {
                    return source_of_all_editions(code_limits::receptacle_to_water.source) +
                           "; for fountains common practice";
                },
            .find = find_near_water};
}

} // namespace rillwatt
