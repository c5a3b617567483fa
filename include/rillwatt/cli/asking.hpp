#pragma once

#include "rillwatt/cli/console.hpp"
#include "rillwatt/engine/answer.hpp"
#include "rillwatt/finding/input_error.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// Asks the engine what a command answers over the files on the disk, by the clock of the system.
Answer ask(const std::string& command, const Arguments& arguments, const Console& console);

/// Says an answer: the result to `console.out`, remarks and errors to `console.err`.
ExitStatus say(const Answer& answer, Console& console);

/// Both, for commands that write no file.
ExitStatus ask_and_say(const std::string& command, const Arguments& arguments, Console& console);

/// Writes each error as its own block.
void print_errors(const std::vector<InputError>& errors, Console& console);

} // namespace rillwatt
