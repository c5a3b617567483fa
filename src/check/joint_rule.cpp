#include "rillwatt/layout/places.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include "mains_finding.hpp"

namespace rillwatt {

namespace {

void judge_splices(const RuleContext& context, std::vector<Finding>& findings) {
    for (const Splice& splice : context.site.splices) {
        const Area* water = splice.at ? context.areas.water_at(*splice.at) : nullptr;
        if (water == nullptr) continue;
        findings.push_back(finding_about(
            context, splice, Severity::warning, fmt::format("splice {} lies in {}", splice.id, water->id),
            "a dry place beside the water, within reach of the lights' leads", common_practice));
    }
}

/// Whether cable leads into the water to where the lead begins.
bool is_joined_in_water(const RuleContext& context, std::size_t i) {
    const Fixture& fixture = context.site.fixtures[i];
    const FixtureType* type = context.circuits.fixture_types[i];
    const std::optional<Metres> length = context.lengths.fixtures[i].length;
    return fixture.at && context.areas.in_water(fixture) && type->lead > Metres(0) &&
           context.lengths.fixtures[i].origin != LengthOrigin::typed && length && *length > Metres(0);
}

/// One note for all lights: each is fixed in the same way.
void note_lights(const RuleContext& context, std::vector<Finding>& findings) {
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < context.site.fixtures.size(); ++i)
        if (is_joined_in_water(context, i)) ids.push_back(context.site.fixtures[i].id);
    if (ids.empty()) return;
    Part site;
    site.location.file = context.site.file;
    findings.push_back(finding_about(context, site, Severity::note,
                                     fmt::format("the joint of cable and lead lies in the water, for the "
                                                 "cable is measured to the light itself: {}",
                                                 some_of(ids)),
                                     "make the joint beside the water, within reach of the lead, and write "
                                     "as `length` what the cable measures "
                                     "up to there",
                                     common_practice));
}

std::vector<Finding> find(const RuleContext& context) {
    std::vector<Finding> findings;
    judge_splices(context, findings);
    note_lights(context, findings);
    return findings;
}

} // namespace

Rule joint_in_water_rule() {
    return {
        .id = "joint-in-water",
        .group = RuleGroup::low_voltage,
        .severity = "warning for a splice, note for lights",
        .summary = "A splice lies in water",
        .explanation =
            "A joint under water is the first to fail, and nobody can get at it. A submersible light comes "
            "with its lead so that the joint can be dry. A splice in water is a warning; lights whose "
            "cable is measured into the water are a note.",
        .source = common_practice.practice,
        .find = find};
}

} // namespace rillwatt
