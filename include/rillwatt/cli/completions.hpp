#pragma once

#include "rillwatt/cli/command.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// Completion script for one shell, from the specs the command line is parsed with.
std::string bash_completions(const std::vector<Command>& commands);
std::string zsh_completions(const std::vector<Command>& commands);
std::string fish_completions(const std::vector<Command>& commands);

} // namespace rillwatt
