#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/commands.hpp"

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    return ask_and_say("explain", arguments, console);
}

} // namespace

Command explain_command() {
    return {.name = "explain",
            .summary = "Show the arithmetic that leads to one part's volts",
            .description =
                "Each length with its gauge, ohms, amperes and drop, the table and the formula, so that a "
                "person with a pocket calculator gets the same number. PART is a light, splice, run, "
                "transformer, branch circuit or pump.",
            .arguments = {site_argument(), {.name = "PART", .help = "its id in the site file"}},
            .options = {{.name = "--case",
                         .value = "CASE",
                         .help = "which supply",
                         .choices = {"nominal", "weak", "strong"},
                         .fallback = "nominal"},
                        catalog_option()},
            .examples = {{"rillwatt explain garden.toml path-4", "why path-4 gets the volts it gets"}},
            .run = run};
}

} // namespace rillwatt
