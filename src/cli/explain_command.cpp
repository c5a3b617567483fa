#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/load_site.hpp"
#include "rillwatt/text/explain_text.hpp"

#include <fmt/format.h>

#include <ostream>

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

ExitStatus no_such_part(const Assessment& assessment, const std::string& id, Console& console) {
    console.err << fmt::format("rillwatt explain: {} has no part `{}` that can be explained",
                               printable(assessment.site->file), printable(id));
    if (const auto nearest = nearest_spelling(id, explainable(*assessment.site)))
        console.err << fmt::format("; nearest is `{}`", printable(*nearest));
    console.err << '\n';
    return ExitStatus::wrong_input;
}

ExitStatus run(const Arguments& arguments, Console& console) {
    const std::optional<Assessment> assessment = load_and_assess(arguments, console);
    if (!assessment) return ExitStatus::wrong_input;
    const CaseResult& result = case_named(assessment->solution, arguments.text("--case"));
    const std::optional<std::string> text =
        explain_text(*assessment, result, arguments.text("PART"), {.colour = console.colour});
    if (!text) return no_such_part(*assessment, arguments.text("PART"), console);
    console.out << *text;
    return ExitStatus::ok;
}

} // namespace

Command explain_command() {
    return {.name = "explain",
            .summary = "Show the arithmetic that leads to one part's volts",
            .description =
                "Each length with its gauge, ohms, amperes and drop, the table and the formula, so that a "
                "person with a pocket calculator gets the same number. PART is a light, splice, run, "
                "transformer, branch circuit or pump.",
            .arguments = {site_argument(), {.name = "PART", .help = "its id in the site file"}},
            .options = {{.name = "--case",
                         .value = "CASE",
                         .help = "which supply",
                         .choices = {"nominal", "weak", "strong"},
                         .fallback = "nominal"},
                        catalog_option()},
            .examples = {{"rillwatt explain garden.toml path-4", "why path-4 gets the volts it gets"}},
            .run = run};
}

} // namespace rillwatt
