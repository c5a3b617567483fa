#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/file_access.hpp"
#include "rillwatt/cli/load_site.hpp"
#include "rillwatt/drawing/diagram_svg.hpp"
#include "rillwatt/drawing/plan_svg.hpp"
#include "rillwatt/text/check_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <ostream>

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

/// Writes the drawing where it was asked for; returns whether it is there.
bool write_drawing(const std::string& drawing, const Arguments& arguments, Console& console) {
    const std::string& path = arguments.text("--output");
    if (path.empty()) {
        console.out << drawing;
        return true;
    }
    std::error_code fault;
    if (std::filesystem::equivalent(path, arguments.text("SITE"), fault)) {
        console.err << fmt::format("rillwatt: {} is the site file itself; nothing was written\n",
                                   printable(path));
        return false;
    }
    const std::string problem =
        arguments.has("--force") ? write_file(path, drawing) : write_new_file(path, drawing);
    if (!problem.empty())
        console.err << fmt::format("rillwatt: cannot write {}: {}\n", printable(path), problem);
    return problem.empty();
}

/// As load_and_assess, with the light on the ground when `--light` asks for it.
std::optional<Assessment> assess_for_drawing(const Arguments& arguments, Console& console) {
    if (!arguments.has("--light")) return load_and_assess(arguments, console);
    const std::optional<LoadedSite> loaded = load_site(arguments, console);
    if (!loaded) return std::nullopt;
    const std::optional<PhotometricFiles> files = load_photometry(*loaded, console);
    if (!files) return std::nullopt;
    LoadResult<Assessment> assessed = assess(loaded->site, loaded->catalog, &*files);
    print_errors(std::move(assessed.errors), *loaded, console);
    return std::move(assessed.value);
}

ExitStatus run(const Arguments& arguments, Console& console) {
    const std::optional<Assessment> assessment = assess_for_drawing(arguments, console);
    if (!assessment) return ExitStatus::wrong_input;
    const bool lit = assessment->light && assessment->light->map && !assessment->light->map->lux.empty();
    const PlanOptions options{.lux = lit ? &*assessment->light->map : nullptr};
    const std::string drawing =
        arguments.has("--diagram") ? diagram_svg(*assessment) : plan_svg(*assessment, options);
    if (!write_drawing(drawing, arguments, console)) return ExitStatus::wrong_input;
    const std::vector<Finding> findings = plan_findings(*assessment);
    if (!findings.empty()) console.err << findings_text(findings, {.colour = false, .width = 80});
    return any_error(findings) ? ExitStatus::findings : ExitStatus::ok;
}

} // namespace

Command plan_command() {
    return {
        .name = "plan",
        .summary = "Draw the plan of a site to scale, as SVG",
        .description =
            "Draws what has a place: areas, walks, falls, marks, sleeves, parts, and the cables along their "
            "trenches. Needs no cable, transformer or light to be there yet, so it can be used while "
            "measuring. Findings about the plan go to standard error; exit status 1 when there is no way "
            "for a cable.",
        .arguments = {site_argument()},
        .options = {{.name = "--output",
                     .value = "FILE",
                     .help = "write to this file instead of standard output"},
                    {.name = "--force", .help = "write over that file if it exists"},
                    {.name = "--light", .help = "with lines of equal light on the ground"},
                    {.name = "--diagram", .help = "draw the single-line diagram of the circuits instead"},
                    catalog_option()},
        .examples = {{"rillwatt plan garden.toml --output plan.svg",
                      "the plan, for a browser or the printer"},
                     {"rillwatt plan garden.toml --diagram --output diagram.svg",
                      "the circuits as a single-line diagram"}},
        .run = run};
}

} // namespace rillwatt
