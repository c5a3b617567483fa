#pragma once

#include "rillwatt/finding/input_error.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// The answer of a command to wrong input, for programs:
/// `{ "schema", "command", "errors": [ { "file", "line", "found", "expected", "source_line" } ] }`.
/// What stands in no file, or is not known, is null.
std::string errors_json(std::string_view command, const std::vector<InputError>& errors);

} // namespace rillwatt
