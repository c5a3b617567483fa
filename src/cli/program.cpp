#include "rillwatt/cli/command_line.hpp"
#include "rillwatt/cli/process_memory.hpp"

#include <cstdlib>
#include <exception>
#include <iostream>
#include <string_view>
#include <unistd.h>

namespace rillwatt {

namespace {

/// The value of an environment variable; empty where it is not set.
std::string_view environment(const char* name) {
    const char* value = std::getenv(name);
    return value == nullptr ? std::string_view() : std::string_view(value);
}

/// Whether standard output takes colours: a terminal that knows them, and nobody who forbids it (NO_COLOR, as
/// https://no-color.org has it).
bool colour_wanted() {
    const std::string_view terminal = environment("TERM");
    return environment("NO_COLOR").empty() && !terminal.empty() && terminal != "dumb" &&
           isatty(STDOUT_FILENO) == 1;
}

} // namespace

int run_program(int argc, const char* const* argv) {
    prepare_memory();
    Console console{.in = std::cin,
                    .out = std::cout,
                    .err = std::cerr,
                    .colour = colour_wanted(),
                    .interactive = isatty(STDIN_FILENO) == 1};
    ExitStatus status = ExitStatus::fault;
    try {
        status = run_command_line({argv + 1, argv + argc}, console);
    } catch (const std::exception& fault) {
        std::cerr << "rillwatt: a fault of the program itself, not of your file: " << fault.what() << '\n';
    }
    std::cout.flush();
    if (!std::cout) {
        std::cerr << "rillwatt: the output could not be written\n";
        if (status == ExitStatus::ok || status == ExitStatus::findings) status = ExitStatus::fault;
    }
    return static_cast<int>(status);
}

} // namespace rillwatt
