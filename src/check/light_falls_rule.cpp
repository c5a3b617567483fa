#include "rillwatt/light/falls_light.hpp"
#include "rillwatt/limits/light_limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"

namespace rillwatt {
namespace {

std::vector<Finding> find_unlit(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const FallsLight& light : context.light->falls) {
        if (!against_lit_share(light.lit_share).broken()) continue;
        const Falls& falls = context.site.falls[light.falls];
        findings.push_back(
            {.severity = Severity::warning,
             .part = falls.id,
             .location = falls.location,
             .message = fmt::format("{}: {} % of the face has {} lx or more; it has {} on average", falls.id,
                                    fixed_text(100 * light.lit_share, 0), trimmed_text(falls_lit_lux, 0),
                                    lux_text(light.mean)),
             .hint = "lights at the foot of the sheet that look up at it; `rillwatt place` proposes them"});
    }
    return findings;
}

} // namespace

Rule falls_unlit_rule() {
    return {.id = "falls-unlit",
            .group = RuleGroup::light,
            .severity = "warning",
            .summary = "Less than half of a falls face has 20 lx or more",
            .explanation =
                "Falls are seen after dark by light on the sheet itself. Put lights at its foot, under or in "
                "front of the lip, as many as the width needs, and aim them at the face. Light from under "
                "water is computed through a still surface: a best case, for falls break it up.",
            .source = limits::falls_lit_share.source,
            .find = find_unlit};
}

} // namespace rillwatt
