#include "rillwatt/text/findings_words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rillwatt {

namespace {

bool is_about_light(const Finding& finding) {
    const std::vector<Rule>& rules = all_rules();
    return std::any_of(rules.begin(), rules.end(), [&](const Rule& rule) {
        return rule.group == RuleGroup::light && rule.id == finding.rule;
    });
}

} // namespace

std::string about_light_text(const std::vector<Finding>& findings) {
    const auto count = std::count_if(findings.begin(), findings.end(), is_about_light);
    if (count == 0) return "";
    return fmt::format("{} of them about light, which `check` leaves to `light` and `report`", count);
}

std::string light_elsewhere_text(const Assessment& assessment) {
    if (assessment.light || assessment.site->fixtures.empty()) return "";
    return "Light, glare and views are judged by `rillwatt light` and `rillwatt report`.\n";
}

} // namespace rillwatt
