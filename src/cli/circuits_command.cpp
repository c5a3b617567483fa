#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/load_site.hpp"
#include "rillwatt/exchange/circuits_json.hpp"
#include "rillwatt/text/circuits_text.hpp"

#include <ostream>

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    const std::optional<Assessment> assessment = load_and_assess(arguments, console);
    if (!assessment) return ExitStatus::wrong_input;
    if (arguments.text("--format") == "json")
        console.out << circuits_json(*assessment);
    else
        console.out << circuits_text(*assessment, {.colour = console.colour});
    return ExitStatus::ok;
}

} // namespace

Command circuits_command() {
    return {
        .name = "circuits",
        .summary = "Propose what the line-voltage side leaves open: circuits, breakers, copper, depth",
        .description =
            "Loads that name no circuit get new ones, pumps apart from lights; open breakers, conductors, "
            "wiring and depths are chosen for load, drop and crossing, and each choice says why. What is "
            "written stays as it is; the file is not touched. For the talk with the electrician, who "
            "decides.",
        .arguments = {site_argument()},
        .options = {format_option(), catalog_option()},
        .examples = {{"rillwatt circuits garden.toml", "what to ask the electrician for"},
                     {"rillwatt circuits garden.toml --format json", "the same for a program"}},
        .run = run};
}

} // namespace rillwatt
