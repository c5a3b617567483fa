#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/commands.hpp"

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    return ask_and_say("check", arguments, console);
}

} // namespace

Command check_command() {
    return {
        .name = "check",
        .summary = "Compute every lamp's volts and every load, and say what is wrong",
        .description =
            "Solves the low-voltage side at nominal, weak and strong supply, measures lengths that are "
            "left out on the plan, sums up the branch circuits and applies every rule but those about "
            "light. Exit status 1: at least one error finding.",
        .arguments = {site_argument()},
        .options = {format_option(), catalog_option()},
        .examples = {{"rillwatt check garden.toml", "the circuit, the lamps, the loads and what is wrong"},
                     {"rillwatt check garden.toml --format json", "the same for a program"}},
        .run = run};
}

} // namespace rillwatt
