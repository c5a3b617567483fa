#include "rillwatt/layout/places.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "all_rules.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

/// A typed length may fall this much short of the straight line before it is called short: rounding, not
/// measuring.
constexpr Metres rounding{1e-6};

/// Visits the part, its feed and the length of each that `applies`.
template<class Applies, class Visit>
void for_each_length(const RuleContext& context, Applies applies, Visit visit) {
    const Site& site = context.site;
    const SiteLengths& lengths = context.lengths;
    const std::string nothing;
    for (std::size_t i = 0; i < site.splices.size(); ++i)
        if (applies(lengths.splices[i])) visit(site.splices[i], site.splices[i].from, lengths.splices[i]);
    for (std::size_t i = 0; i < site.fixtures.size(); ++i) {
        if (!applies(lengths.fixtures[i])) continue;
        const Fixture& fixture = site.fixtures[i];
        visit(fixture, fixture.from ? *fixture.from : nothing, lengths.fixtures[i]);
    }
    for (std::size_t i = 0; i < site.links.size(); ++i)
        if (applies(lengths.links[i])) visit(site.links[i], site.links[i].a, lengths.links[i]);
}

bool is_blocked(const PartLength& length) { return !length.blocked_by.empty(); }
bool crosses_areas(const PartLength& length) { return !length.crossed.empty(); }

bool is_too_short(const PartLength& length) {
    return length.origin == LengthOrigin::typed && length.straight &&
           *length.length + rounding < *length.straight;
}

/// How far a part reaches beyond its cable: a light in water by its own lead, which may be joined to it on
/// dry ground; nothing else.
Metres lead_beyond_cable(const RuleContext& context, const Fixture& fixture) {
    if (!context.areas.in_water(fixture)) return Metres(0);
    return context.circuits.fixture_types[static_cast<std::size_t>(&fixture - context.site.fixtures.data())]
        ->lead;
}
Metres lead_beyond_cable(const RuleContext&, const Part&) { return Metres(0); }

std::vector<Finding> find_no_route(const RuleContext& context) {
    std::vector<Finding> findings;
    for_each_length(context, is_blocked,
                    [&](const Part& part, const std::string& from, const PartLength& length) {
                        findings.push_back(
                            {.severity = Severity::error,
                             .part = part.id,
                             .location = part.location,
                             .message = fmt::format("no trench leads from {} to {}: {} is in the way", from,
                                                    part.id, length.blocked_by),
                             .hint = length.sleeve_hint.empty() ? "a sleeve, another place, or a typed length"
                                                                : length.sleeve_hint});
                    });
    return findings;
}

std::vector<Finding> find_crossing(const RuleContext& context) {
    std::vector<Finding> findings;
    for_each_length(
        context, crosses_areas, [&](const Part& part, const std::string& from, const PartLength& length) {
            findings.push_back({.severity = Severity::warning,
                                .part = part.id,
                                .location = part.location,
                                .message = fmt::format("the cable from {} to {} has to get through {}", from,
                                                       part.id, fmt::join(length.crossed, ", ")),
                                .hint = "a sleeve laid before the paving, or a saw cut"});
        });
    return findings;
}

std::vector<Finding> find_short(const RuleContext& context) {
    std::vector<Finding> findings;
    const LengthUnit unit = context.site.settings.units;
    for_each_length(
        context, is_too_short, [&](const auto& part, const std::string& from, const PartLength& length) {
            if (*length.length + lead_beyond_cable(context, part) + rounding >= *length.straight) return;
            findings.push_back(
                {.severity = Severity::warning,
                 .part = part.id,
                 .location = part.location,
                 .message = fmt::format("{} of cable from {} to {} is shorter than the straight line of {} "
                                        "on the plan",
                                        length_text(*length.length, unit), from, part.id,
                                        length_text(*length.straight, unit)),
                 .hint = "measure again, or leave `length` out and take it from the plan"});
        });
    return findings;
}

} // namespace

Rule no_route_rule() {
    return {.id = "no-route",
            .group = RuleGroup::plan,
            .severity = "error",
            .summary = "No trench on the plan leads to a part",
            .explanation =
                "A trench may run anywhere except through the inside of a building, paving or water. Areas "
                "less than 3 mm apart count as touching: that is the rounding of a tape reading, and no "
                "spade goes through. The finding names the area in the way and where a sleeve would help "
                "most.",
            .source = "plan in the site file",
            .find = find_no_route};
}

Rule route_crosses_paving_rule() {
    return {.id = "route-crosses-paving",
            .group = RuleGroup::plan,
            .severity = "warning",
            .summary = "A cable starts or ends inside paving or a building",
            .explanation = "The cable has to get through that area: a sleeve laid beforehand, or a saw cut.",
            .source = "plan in the site file",
            .find = find_crossing};
}

Rule length_shorter_than_plan_rule() {
    return {.id = "length-shorter-than-plan",
            .group = RuleGroup::plan,
            .severity = "warning",
            .summary = "A typed length is shorter than the straight line on the plan",
            .explanation =
                "No cable is shorter than the straight line between its ends: one of the two was measured "
                "or typed wrongly.",
            .source = "plan in the site file",
            .find = find_short};
}

} // namespace rillwatt
