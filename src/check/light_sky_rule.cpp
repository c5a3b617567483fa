#include "rillwatt/light/light_result.hpp"
#include "rillwatt/limits/light_limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"

namespace rillwatt {
namespace {

std::vector<Finding> find_wasted(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const FixtureLight& light : context.light->fixtures) {
        const double lumens = light.wasted_upward * light.lumens.value();
        if (!above(light.wasted_upward, limits::wasted_uplight.value) ||
            !above(lumens, limits::harmless_uplight_lumens.value))
            continue;
        const Fixture& fixture = context.site.fixtures[light.fixture];
        findings.push_back(
            {.severity = Severity::note,
             .part = fixture.id,
             .location = fixture.location,
             .message =
                 fmt::format("{} sends {} % of its light ({} lm) up past every falls and wall", fixture.id,
                             fixed_text(100 * light.wasted_upward, 0), fixed_text(lumens, 0)),
             .hint = "a narrower beam, an `aim`, or fewer lumens; the stone, tree or shrub it is meant for "
                     "counts once the plan has it: an `[[area]]` of kind \"bed\" with a `height`"});
    }
    return findings;
}

std::vector<Finding> find_cool(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const Fixture& fixture : context.site.fixtures) {
        const FixtureType* type = find_entry(context.catalog.fixtures, fixture.model);
        if (type == nullptr || !type->colour_temperature) continue;
        if (!above(*type->colour_temperature, limits::warm_colour.value)) continue;
        findings.push_back(
            {.severity = Severity::note,
             .part = fixture.id,
             .location = fixture.location,
             .message = fmt::format("{} shines at {} K, cooler than {} K", fixture.id,
                                    fixed_text(*type->colour_temperature, 0),
                                    fixed_text(limits::warm_colour.value, 0)),
             .hint = "2700 K for paths, stone and plants; cool light only as a meant effect on water"});
    }
    return findings;
}

std::vector<Finding> find_mismatch(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const LumenMismatch& mismatch : context.light->mismatches)
        findings.push_back(
            {.severity = Severity::note,
             .part = mismatch.type,
             .location = mismatch.location,
             .message = fmt::format("the photometric file of {} gives {} lm, its catalog entry {} lm",
                                    mismatch.type, fixed_text(mismatch.measured.value(), 0),
                                    fixed_text(mismatch.stated.value(), 0)),
             .hint = "the file counts; fix the one that is wrong"});
    for (const LightRemark& remark : context.light->remarks)
        findings.push_back({.severity = Severity::note,
                            .location = remark.location,
                            .message = remark.text,
                            .hint = "read all the same; ask for a clean file"});
    return findings;
}

} // namespace

Rule uplight_wasted_rule() {
    return {.id = "uplight-wasted",
            .group = RuleGroup::light,
            .severity = "note",
            .summary = "A light sends more than 15 % of its lumens up past every falls and wall",
            .explanation =
                "Light that meets nothing goes to the sky: it dims the stars, wakes birds and costs power. "
                "Counted is what goes above level and meets neither a falls face nor anything with a height "
                "on the plan. Choose a narrower beam, aim closer, or use fewer lumens.",
            .source = limits::wasted_uplight.source,
            .find = find_wasted};
}

Rule warm_colour_rule() {
    return {.id = "warm-colour",
            .group = RuleGroup::light,
            .severity = "note",
            .summary = "A light's colour is cooler than 3000 K",
            .explanation =
                "Cool light scatters more in the sky and disturbs animals and sleepers more than warm light "
                "of the same lumens.",
            .source = limits::warm_colour.source,
            .find = find_cool};
}

Rule photometric_file_rule() {
    return {.id = "photometric-file",
            .group = RuleGroup::light,
            .severity = "note",
            .summary = "A photometric file is odd, or its lumens are more than 5 % off its catalog entry's",
            .explanation =
                "Light is computed from the file. When the file and the catalog entry disagree, one of them "
                "belongs to another light.",
            .source = "ANSI/IES LM-63-2019; EULUMDAT",
            .find = find_mismatch};
}

} // namespace rillwatt
