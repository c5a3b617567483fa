#pragma once

#include "rillwatt/cli/command.hpp"

namespace rillwatt {

// One function for each command, each in its own file of src/cli; src/cli/all_commands.cpp puts them in
// order.
Command catalog_command();
Command check_command();
Command circuits_command();
Command completions_command();
Command explain_command();
Command light_command();
Command headroom_command();
Command manual_command();
Command new_command();
Command place_command();
Command plan_command();
Command report_command();
Command rules_command();
Command schema_command();
Command watch_command();
Command size_command();

} // namespace rillwatt
