#pragma once

#include <string_view>
#include <vector>

namespace rillwatt {

/// One file of the example garden, compiled into the program.
struct ExampleFile {
    const char* name;
    std::string_view text;
};

/// The example garden of examples/fernhollow: the site file and its catalog.
const std::vector<ExampleFile>& example_files();

} // namespace rillwatt
