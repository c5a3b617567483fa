#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/load_site.hpp"
#include "rillwatt/exchange/check_json.hpp"
#include "rillwatt/text/check_text.hpp"

#include <ostream>

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    const std::optional<Assessment> assessment = load_and_assess(arguments, console);
    if (!assessment) return ExitStatus::wrong_input;
    if (arguments.text("--format") == "json")
        console.out << check_json(*assessment);
    else
        console.out << check_text(*assessment, {.colour = console.colour});
    return any_error(assessment->findings) ? ExitStatus::findings : ExitStatus::ok;
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
