#include "rillwatt/cli/command_line.hpp"

#include <cstdlib>

int main(int argc, char** argv) {
    const int status = rillwatt::run_program(argc, argv);
#ifdef RILLWATT_SANITIZED
    return status; // leaks are looked for on the way out
#else
    std::_Exit(status); // everything is written; the system takes the memory back at once
#endif
}
