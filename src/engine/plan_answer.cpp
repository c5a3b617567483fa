#include "rillwatt/drawing/diagram_svg.hpp"
#include "rillwatt/drawing/plan_svg.hpp"
#include "rillwatt/plan/assess_site.hpp"
#include "rillwatt/text/check_text.hpp"

#include "answers.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

/// What the plan itself shows to be wrong, apart from volts and loads.
std::vector<Finding> plan_findings(const Assessment& assessment) {
    std::vector<std::string> rules;
    for (const Rule& rule : all_rules())
        if (rule.group == RuleGroup::plan) rules.emplace_back(rule.id);
    std::vector<Finding> findings;
    for (const Finding& finding : assessment.findings)
        if (std::find(rules.begin(), rules.end(), finding.rule) != rules.end()) findings.push_back(finding);
    return findings;
}

/// With the light on the ground when `--light` asks for it.
LoadResult<Assessment> assess_for_drawing(const Request& request, FileSource& files) {
    if (!request.arguments.has("--light")) return assess_site(site_files(request), files);
    LoadResult<LoadedSite> loaded = load_site(site_files(request), files);
    if (!loaded) return {std::nullopt, std::move(loaded.errors)};
    return assess_with_light(*loaded.value, files);
}

std::string drawing_of(const Assessment& assessment, bool diagram) {
    if (diagram) return diagram_svg(assessment);
    const bool lit = assessment.light && assessment.light->map && !assessment.light->map->lux.empty();
    return plan_svg(assessment, {.lux = lit ? &*assessment.light->map : nullptr});
}

} // namespace

Answer plan_answer(const Request& request, FileSource& files) {
    const LoadResult<Assessment> assessed = assess_for_drawing(request, files);
    if (!assessed) return refused(request, assessed.errors);
    const std::vector<Finding> findings = plan_findings(*assessed.value);
    return {.status = status_of(findings),
            .out = drawing_of(*assessed.value, request.arguments.has("--diagram")),
            .err = findings.empty() ? "" : findings_text(findings, {.colour = false, .width = 80})};
}

} // namespace rillwatt
