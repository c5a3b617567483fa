#include "rillwatt/layout/places.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include "mains_finding.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

bool is_building(const Area& area) { return area.kind == AreaKind::building; }

std::vector<Finding> find(const RuleContext& context) {
    const std::vector<Area>& areas = context.site.areas;
    std::vector<Finding> findings;
    if (std::none_of(areas.begin(), areas.end(), is_building)) return findings; // no house on the plan
    for (const BranchCircuit& branch : context.site.circuits) {
        if (branch.outdoors || !branch.at) continue;
        const std::vector<std::size_t> covering = context.areas.covering(*branch.at);
        const bool inside = std::any_of(covering.begin(), covering.end(),
                                        [&](std::size_t i) { return is_building(areas[i]); });
        if (inside) continue;
        findings.push_back(finding_about(
            context, branch, Severity::warning,
            fmt::format("the outlet of {} counts as indoors and stands outside every building of the plan: "
                        "cover, burial depth and protection of outdoor outlets are not judged",
                        branch.id),
            "`outdoors = true`, or `at` inside the building", common_practice));
    }
    return findings;
}

} // namespace

Rule outlet_outside_rule() {
    return {
        .id = "outlet-outside",
        .group = RuleGroup::mains,
        .severity = "warning",
        .summary = "An outlet said to be indoors stands outside the buildings of the plan",
        .explanation =
            "A circuit wired indoors may still end at an outlet on the outside of the wall. Such an outlet "
            "is outdoors: it wants ground-fault protection and an in-use cover.",
        .source = common_practice.practice,
        .find = find};
}

} // namespace rillwatt
