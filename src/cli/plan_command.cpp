#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/file_access.hpp"
#include "rillwatt/finding/input_error.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <ostream>

namespace rillwatt {

namespace {

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

ExitStatus run(const Arguments& arguments, Console& console) {
    Answer answer = ask("plan", arguments, console);
    if (answer.status != ExitStatus::wrong_input) {
        if (!write_drawing(answer.out, arguments, console)) return ExitStatus::wrong_input;
        answer.out.clear();
    }
    return say(answer, console);
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
