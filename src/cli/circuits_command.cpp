#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/commands.hpp"

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    return ask_and_say("circuits", arguments, console);
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
