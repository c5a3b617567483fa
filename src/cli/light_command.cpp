#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/commands.hpp"

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    return ask_and_say("light", arguments, console);
}

} // namespace

Command light_command() {
    return {
        .name = "light",
        .summary = "Compute the light on walks and falls, and what is seen from the viewpoints",
        .description =
            "Computes direct light point by point at the lamps' solved voltages: on the ground of every "
            "walk, on every falls face (through still water where a light is submerged), at the points "
            "asked for; which falls are seen from where, and which lights shine into the eye. Lights "
            "need no feed yet.",
        .arguments = {site_argument()},
        .options = {{.name = "--point",
                     .value = "X,Y,Z",
                     .help =
                         "Also give the level light at this point (lengths; bare numbers in the site's unit)",
                     .repeatable = true},
                    format_option(),
                    catalog_option()},
        .examples = {{"rillwatt light garden.toml", "every walk and every falls with a verdict"},
                     {"rillwatt light garden.toml --point \"12 ft,6 ft,0\"",
                      "and the light on the third step"}},
        .run = run};
}

} // namespace rillwatt
