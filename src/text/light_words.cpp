#include "rillwatt/check/rule.hpp"
#include "rillwatt/limits/light_limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/text/light_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rillwatt {

std::vector<Finding> light_findings(const std::vector<Finding>& findings) {
    std::vector<Finding> about_light;
    const auto is_about_light = [](const Finding& finding) {
        return std::any_of(all_rules().begin(), all_rules().end(), [&](const Rule& rule) {
            return rule.group == RuleGroup::light && rule.id == finding.rule;
        });
    };
    std::copy_if(findings.begin(), findings.end(), std::back_inserter(about_light), is_about_light);
    return about_light;
}

std::string walk_target_text(const Walk& walk, const WalkLight& light) {
    if (!light.target_mean && !light.target_minimum) return walk.target.value_or("-");
    std::string text = walk.target && !walk.mean_lux && !walk.min_lux ? *walk.target + ": " : "";
    if (light.target_mean) text += lux_text(*light.target_mean);
    if (light.target_mean && light.target_minimum) text += ", ";
    if (light.target_minimum) text += "darkest " + lux_text(*light.target_minimum);
    return text;
}

std::string walk_verdict(const WalkLight& light) {
    if (!light.meets) return light.maximum.value() > 0 ? "too dark" : "dark";
    if (light.mean.value() > 0 && against_uniformity(light.uniformity).broken()) return "patchy";
    return light.maximum.value() > 0 ? "enough" : "dark";
}

std::string falls_verdict(const FallsLight& light) {
    if (!against_lit_share(light.lit_share).broken()) return "lit";
    return light.maximum.value() > 0 ? "too dim" : "dark";
}

std::vector<std::string> light_method(const Site& site, const LightResult& light) {
    const SiteSettings& settings = site.settings;
    std::vector<std::string> sentences = {
        fmt::format(
            "Direct light only, after light loss ({} dry, {} in water), lamps at their nominal volts; what "
            "walls and planting throw back comes on top.",
            trimmed_text(settings.light_loss_factor, 2), trimmed_text(settings.light_loss_factor_water, 2)),
        fmt::format("Walks: level light on the ground, judged by {}. Falls: light on the upright face.",
                    limits::walk_class_source)};
    const bool through_water = std::any_of(light.falls.begin(), light.falls.end(),
                                           [](const FallsLight& falls) { return falls.through_water; });
    if (through_water)
        sentences.push_back(
            "Light from under water is computed through a still surface (Snell, Fresnel): a best case, "
            "for falls break the surface up.");
    if (through_water && settings.water_attenuation.value() == 0)
        sentences.push_back("The water counts as clear; set water_attenuation for a murky pond.");
    return sentences;
}

} // namespace rillwatt
