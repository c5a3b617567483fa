#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/load_site.hpp"
#include "rillwatt/cli/report_writing.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/text/check_text.hpp"
#include "rillwatt/text/findings_words.hpp"

#include <fmt/format.h>

#include <ostream>

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    const std::optional<LoadedSite> loaded = load_site(arguments, console);
    if (!loaded) return ExitStatus::wrong_input;
    const std::optional<Assessment> assessment = assess_with_light(*loaded, console);
    if (!assessment) return ExitStatus::wrong_input;
    std::vector<std::string> written;
    const std::string problem =
        write_report(*assessment, arguments.text("--output"), arguments.has("--force"), written);
    for (const std::string& path : written)
        console.out << printable(path) << '\n';
    if (!problem.empty()) {
        console.err << "rillwatt report: " << problem << '\n';
        return ExitStatus::wrong_input;
    }
    const std::string light = about_light_text(assessment->findings);
    console.err << fmt::format("findings: {}{}\n", findings_count_text(assessment->findings),
                               light.empty() ? "" : ", " + light);
    return any_error(assessment->findings) ? ExitStatus::findings : ExitStatus::ok;
}

} // namespace

Command report_command() {
    return {
        .name = "report",
        .summary = "Write the whole plan into a folder: page, drawings, bill, cut list, electrician's sheet",
        .description =
            "Each file is written whole or not at all, and nothing outside the folder is touched. The page "
            "needs no other file and no network. Exit status 1: at least one error finding; the report is "
            "written all the same.",
        .arguments = {site_argument()},
        .options = {{.name = "--output",
                     .value = "DIR",
                     .help = "the folder to write into; made when the folder above it exists",
                     .kind = ValueKind::text,
                     .required = true},
                    {.name = "--force", .value = "", .help = "replace the files of an earlier report"},
                    catalog_option()},
        .examples = {{"rillwatt report garden.toml --output plan",
                      "the report of a garden in the folder plan"},
                     {"rillwatt report garden.toml --output plan --force", "again, after a change"}},
        .run = run};
}

} // namespace rillwatt
