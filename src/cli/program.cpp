#include "rillwatt/cli/command_line.hpp"
#include "rillwatt/cli/process_memory.hpp"

#include <cstdlib>
#include <exception>
#include <iostream>
#include <unistd.h>

namespace rillwatt {

int run_program(int argc, const char* const* argv) {
    prepare_memory();
    const char* no_colour = std::getenv("NO_COLOR");
    const bool plain = no_colour != nullptr && *no_colour != '\0';
    Console console{.in = std::cin,
                    .out = std::cout,
                    .err = std::cerr,
                    .colour = !plain && isatty(STDOUT_FILENO) == 1,
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
