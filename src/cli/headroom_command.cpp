#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/load_site.hpp"
#include "rillwatt/exchange/size_json.hpp"
#include "rillwatt/text/size_text.hpp"

#include "size_options.hpp"
#include <ostream>

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    const std::optional<SizeOptions> options = size_options(arguments, console);
    if (!options) return ExitStatus::wrong_input;
    const std::optional<Assessment> assessment = load_and_assess(arguments, console);
    if (!assessment) return ExitStatus::wrong_input;
    const std::vector<Headroom> rooms = find_headroom(*assessment, *options);
    if (arguments.text("--format") == "json")
        console.out << headroom_json(rooms, *assessment);
    else
        console.out << headroom_text(rooms, *assessment, *options, {.colour = console.colour});
    return any_error(assessment->findings) ? ExitStatus::findings : ExitStatus::ok;
}

} // namespace

Command headroom_command() {
    return {
        .name = "headroom",
        .summary = "Say how many more volt-amperes each place can carry, and what breaks first",
        .description =
            "For each transformer, run, splice and light of a complete site: how much constant-power load "
            "can "
            "be added there, one place at a time, before a lamp leaves its window, a cable or an output is "
            "overloaded or the transformer is loaded beyond the limit.",
        .arguments = {site_argument()},
        .options = {margin_option(), loading_option(), format_option(), catalog_option()},
        .examples = {{"rillwatt headroom garden.toml", "where two more lights can hang next year"}},
        .run = run};
}

} // namespace rillwatt
