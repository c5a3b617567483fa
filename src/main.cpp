#include "rillwatt/cli/command_line.hpp"

int main(int argc, char** argv) { return rillwatt::run_program(argc, argv); }
