#include "rillwatt/cli/command.hpp"
#include "rillwatt/cli/commands.hpp"

namespace rillwatt {

const std::vector<Command>& all_commands() {
    static const std::vector<Command> commands = {
        new_command(),     check_command(), explain_command(), light_command(),  place_command(),
        catalog_command(), rules_command(), schema_command(),  manual_command(), completions_command(),
        new_command(),   check_command(),  explain_command(), plan_command(),        catalog_command(),
        rules_command(), schema_command(), manual_command(),  completions_command(),
    };
    return commands;
}

} // namespace rillwatt
