// Writes a file over and over, half of the time one text and half of the time another, until it is killed.
#include "rillwatt/cli/file_access.hpp"

int main(int argc, char** argv) {
    if (argc != 2) return 2;
    const std::string first(300000, 'a');
    const std::string second(200000, 'b');
    for (;;) {
        if (!rillwatt::write_file(argv[1], first).empty()) return 1;
        if (!rillwatt::write_file(argv[1], second).empty()) return 1;
    }
}
