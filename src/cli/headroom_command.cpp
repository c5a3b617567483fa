#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/commands.hpp"

#include "size_options.hpp"

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    return ask_and_say("headroom", arguments, console);
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
