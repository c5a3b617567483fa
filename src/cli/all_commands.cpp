#include "rillwatt/cli/command.hpp"
#include "rillwatt/cli/commands.hpp"

namespace rillwatt {

const std::vector<Command>& all_commands() {
    // clang-format off
    static const std::vector<Command> commands = {
        new_command(),
        check_command(),
        explain_command(),
        plan_command(),
        light_command(),
        place_command(),
        size_command(),
        headroom_command(),
        circuits_command(),
        report_command(),
        watch_command(),
        catalog_command(),
        rules_command(),
        schema_command(),
        manual_command(),
        completions_command(),
    };
    // clang-format on
    return commands;
}

} // namespace rillwatt
