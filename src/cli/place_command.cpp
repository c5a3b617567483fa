#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/site_update.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/plan/place_report.hpp"

#include <fmt/format.h>

#include <ostream>

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    const Answer answer = ask("place", arguments, console);
    const ExitStatus status = say(answer, console);
    if (!answer.edit) return status;
    const std::string& path = arguments.text("SITE");
    if (!update_site_file(path, answer.edit->as_read, answer.edit->update, console))
        return ExitStatus::wrong_input;
    console.err << fmt::format("{} to {}\n", answer.edit->changes, printable(path));
    return status;
}

std::vector<std::string> kind_names() {
    std::vector<std::string> names;
    for (const FixtureKind kind : placed_kinds)
        names.emplace_back(fixture_kind_name(kind));
    return names;
}

} // namespace

Command place_command() {
    return {
        .name = "place",
        .summary = "Propose lights for walks and falls that have none or too few",
        .description =
            "Finds the fewest lights (or the cheapest) that give each walk its class and light each falls "
            "face: staggered or along one side, set back from the edge, not in water, on paving or in a "
            "building, not into a viewer's eye; for falls at the foot of the sheet, looking up at it. "
            "Lights that are there count. Every proposal is verified by computing the light with it in "
            "place. Exit status 1: some walk or falls cannot be lit with what is on offer.",
        .arguments = {site_argument()},
        .options = {{.name = "--model",
                     .value = "MODEL",
                     .help = "Only this catalog entry; without it the site's stock, else every priced light",
                     .repeatable = true},
                    {.name = "--kind",
                     .value = "KIND",
                     .help = "Only lights of this kind",
                     .choices = kind_names(),
                     .repeatable = true},
                    {.name = "--cheapest", .help = "Least money instead of fewest lights"},
                    {.name = "--write",
                     .help = "Add the lights to the site file; the rest of it stays as it is"},
                    format_option(),
                    catalog_option()},
        .examples = {{"rillwatt place garden.toml", "where lights should go, and why"},
                     {"rillwatt place garden.toml --model path-2w-wide --write", "add them to the file"}},
        .run = run};
}

} // namespace rillwatt
