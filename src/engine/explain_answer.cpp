#include "rillwatt/plan/assess_site.hpp"
#include "rillwatt/text/explain_text.hpp"

#include <fmt/format.h>

#include "answers.hpp"

namespace rillwatt {

namespace {

const CaseResult& case_named(const SiteSolution& solution, const std::string& name) {
    for (const CaseResult& result : solution.cases)
        if (result.conditions.name == name) return result;
    return solution.nominal();
}

/// Ids of every part that can be explained, for the nearest spelling.
std::vector<std::string> explainable(const Site& site) {
    std::vector<std::string> ids;
    const auto add = [&ids](const auto& parts) {
        for (const Part& part : parts)
            ids.push_back(part.id);
    };
    add(site.fixtures);
    add(site.splices);
    add(site.runs);
    add(site.transformers);
    add(site.circuits);
    add(site.pumps);
    return ids;
}

std::string no_such_part(const Site& site, const std::string& id) {
    const auto nearest = nearest_spelling(id, explainable(site));
    return fmt::format("{} has no part `{}` that can be explained{}", printable(site.file), printable(id),
                       nearest ? fmt::format("; nearest is `{}`", printable(*nearest)) : "");
}

} // namespace

Answer explain_answer(const Request& request, FileSource& files) {
    const LoadResult<Assessment> assessed = assess_site(site_files(request), files);
    if (!assessed) return refused(request, assessed.errors);
    const Assessment& assessment = *assessed.value;
    const CaseResult& result = case_named(assessment.solution, request.arguments.text("--case"));
    const std::string& part = request.arguments.text("PART");
    std::optional<std::string> text = explain_text(assessment, result, part, text_style(request));
    if (!text) return refused(request, "rillwatt explain", no_such_part(*assessment.site, part));
    return {.out = std::move(*text)};
}

} // namespace rillwatt
