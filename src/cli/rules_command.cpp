#include "rillwatt/check/rule.hpp"
#include "rillwatt/cli/commands.hpp"
#include "rillwatt/exchange/rules_json.hpp"
#include "rillwatt/text/rules_text.hpp"

#include <ostream>

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    if (arguments.text("--format") == "json")
        console.out << rules_json(all_rules());
    else
        console.out << rules_text(all_rules(), {.colour = console.colour});
    return ExitStatus::ok;
}

} // namespace

Command rules_command() {
    return {.name = "rules",
            .summary = "List every rule with its explanation and the source of its limit",
            .options = {format_option()},
            .examples = {{"rillwatt rules", "every rule the program knows"}},
            .run = run};
}

} // namespace rillwatt
