#pragma once

#include "rillwatt/cli/command.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// Parses a command line (without the program's name) and runs the command it names. Errors of the command
/// line go to `console.err` with exit status 2; help and version go to `console.out` with 0.
ExitStatus run_command_line(const std::vector<std::string>& words, Console& console);

/// The whole program: streams, colour and exit status from the process's surroundings.
int run_program(int argc, const char* const* argv);

/// The version, from one place: the CMake project.
std::string program_version();

} // namespace rillwatt
