#pragma once

#include "rillwatt/cli/command.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// What a manual page says of the program as a whole; the same words as `--help`.
extern const char* const program_summary;

/// The cautions that end every help text and the manual page.
extern const char* const program_cautions;

/// The manual page rillwatt(1) in man(7) markup, from the specs the command line is parsed with.
std::string manual_page(const std::vector<Command>& commands, const std::string& version);

} // namespace rillwatt
