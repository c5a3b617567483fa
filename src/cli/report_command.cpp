#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/report_writing.hpp"
#include "rillwatt/finding/input_error.hpp"

#include <ostream>

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    const Answer answer = ask("report", arguments, console);
    if (answer.status == ExitStatus::wrong_input) return say(answer, console);
    std::vector<std::string> written;
    const std::string problem =
        write_report(answer.report, arguments.text("--output"), arguments.has("--force"), written);
    for (const std::string& path : written)
        console.out << printable(path) << '\n';
    if (problem.empty()) return say(answer, console);
    console.err << "rillwatt report: " << problem << '\n';
    return ExitStatus::wrong_input;
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
