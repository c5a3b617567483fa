#include "rillwatt/light/light_result.hpp"
#include "rillwatt/limits/light_limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"

namespace rillwatt {
namespace {

/// What a light is turned by is rounded up: turned so far, the eye is out of its field.
std::string whole_degrees_up(Degrees angle) { return fixed_text(std::floor(angle.value()) + 1, 0); }

std::vector<Finding> find_glare(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const ViewpointLight& view : context.light->viewpoints)
        for (const Glare& glare : view.glare) {
            const Fixture& fixture = context.site.fixtures[glare.fixture];
            findings.push_back(
                {.severity = Severity::warning,
                 .part = fixture.id,
                 .location = fixture.location,
                 .message = fmt::format("{} shines into the eye at {}{}: the eye is {} degrees off its axis",
                                        fixture.id, context.site.viewpoints[view.viewpoint].id,
                                        glare.mirrored ? ", mirrored in the water" : "",
                                        fixed_text(glare.angle.value(), 0)),
                 .hint = fmt::format("turn it {} degrees away, shield it or move it",
                                     whole_degrees_up(glare.turn_by))});
        }
    return findings;
}

std::vector<Finding> find_blocked(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const ViewpointLight& view : context.light->viewpoints)
        for (const Sightline& line : view.sees) {
            if (line.visible) continue;
            const Viewpoint& viewpoint = context.site.viewpoints[view.viewpoint];
            findings.push_back({.severity = Severity::note,
                                .part = viewpoint.id,
                                .location = viewpoint.location,
                                .message = fmt::format("from {} {} % of {} is seen: {} stands in the way",
                                                       viewpoint.id, fixed_text(100 * line.seen_share, 0),
                                                       context.site.falls[line.falls].id, line.blocked_by)});
        }
    return findings;
}

} // namespace

Rule glare_rule() {
    return {.id = "glare",
            .group = RuleGroup::light,
            .severity = "warning",
            .summary = "A light shines into the eye at a viewpoint, directly or mirrored in still water",
            .explanation =
                "A light whose field angle (a tenth of its greatest intensity) takes in the eye is seen as a "
                "bright dot, and what it lights is not. Turn it away, aim it from the viewer's side, put it "
                "lower or behind a stone, or give it a shield. Still water mirrors: what shines down on a "
                "pond comes up again.",
            .source = limits::glare_source,
            .find = find_glare};
}

Rule view_blocked_rule() {
    return {.id = "view-blocked",
            .group = RuleGroup::light,
            .severity = "note",
            .summary = "Falls that a viewpoint looks at are hidden behind something that stands high",
            .explanation =
                "Lines of sight run from the eye to the face over every area with a height. Light for this "
                "view is of little use here: move the viewpoint, lower what stands between, or look at "
                "something else.",
            .source = "geometry of the plan",
            .find = find_blocked};
}

} // namespace rillwatt
