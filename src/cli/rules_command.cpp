#include "rillwatt/check/rule.hpp"
#include "rillwatt/cli/commands.hpp"

#include <fmt/format.h>

#include <ostream>

namespace rillwatt {

namespace {

ExitStatus run(const Arguments&, Console& console) {
    for (const Rule& rule : all_rules())
        console.out << fmt::format("{} ({})\n  {}\n", rule.id, rule.severity, rule.summary);
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
