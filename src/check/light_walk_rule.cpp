#include "rillwatt/light/light_result.hpp"
#include "rillwatt/limits/light_limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"

namespace rillwatt {
namespace {

std::string target_words(const Walk& walk, const WalkLight& light) {
    std::string words;
    if (light.target_mean) words = lux_text(*light.target_mean) + " on average";
    if (light.target_minimum)
        words += (words.empty() ? "" : " and ") + lux_text(*light.target_minimum) + " at the darkest spot";
    const bool by_class = walk.target && !walk.mean_lux && !walk.min_lux;
    return by_class ? fmt::format("{} asks {}", *walk.target, words) : "asked are " + words;
}

std::vector<Finding> find_dark(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const WalkLight& light : context.light->walks) {
        if (light.meets) continue;
        const Walk& walk = context.site.walks[light.walk];
        const bool by_class = walk.target && !walk.mean_lux && !walk.min_lux;
        findings.push_back(
            {.severity = Severity::warning,
             .part = walk.id,
             .location = walk.location,
             .message = fmt::format("{} has {} on average and {} at its darkest spot, at {}; {}", walk.id,
                                    lux_text(light.mean), lux_text(light.minimum),
                                    plan_point_text(on_plan(light.darkest), context.site.settings.units),
                                    target_words(walk, light)),
             .hint = "more lights, closer together, or brighter ones; `rillwatt place` proposes them",
             .source = by_class ? limits::walk_class_source : "figures given in the site file"});
    }
    return findings;
}

std::vector<Finding> find_uneven(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const WalkLight& light : context.light->walks) {
        if (light.mean.value() <= 0 || !against_uniformity(light.uniformity).broken()) continue;
        const Walk& walk = context.site.walks[light.walk];
        findings.push_back(
            {.severity = Severity::warning,
             .part = walk.id,
             .location = walk.location,
             .message = fmt::format(
                 "{} is patchy: its darkest spot, at {}, has {} of the mean ({} of {}), less than {}",
                 walk.id, plan_point_text(on_plan(light.darkest), context.site.settings.units),
                 fixed_text(light.uniformity, 2), lux_text(light.minimum), lux_text(light.mean),
                 trimmed_text(limits::walk_uniformity.value, 2)),
             .hint = "closer spacing or a wider spread, and a light near the dark spot"});
    }
    return findings;
}

} // namespace

Rule walk_too_dark_rule() {
    return {.id = "walk-too-dark",
            .group = RuleGroup::light,
            .severity = "warning",
            .summary = "A walk gets less light than its class or its given figures ask",
            .explanation =
                "People see where they step when the ground has the light of its class, on average and at "
                "its darkest spot. Set lights closer together or choose brighter ones; see that no wall "
                "stands between. Computed is direct light after light loss, so the real walk is a little "
                "brighter where walls and planting throw light back.",
            .source = limits::walk_class_source,
            .find = find_dark};
}

Rule walk_uneven_rule() {
    return {.id = "walk-uneven",
            .group = RuleGroup::light,
            .severity = "warning",
            .summary = "A walk's darkest spot has less than 0.2 of its mean",
            .explanation =
                "The eye adapts to the bright pools and then sees nothing in the gaps. Set lights so that "
                "their pools touch, staggered on both sides or along one, or choose a wider spread. Where "
                "pools with dark between them are wanted, as on a level lawn path, leave it so knowingly.",
            .source = limits::walk_uniformity.source,
            .find = find_uneven};
}

} // namespace rillwatt
