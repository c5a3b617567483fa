#pragma once

#include "rillwatt/finding/input_error.hpp"

#include <string_view>
#include <vector>

namespace rillwatt {

/// What is found wrong when parts are held against each other is known by part and key; this moves such
/// errors from the line of the part's header to that of the key's value, and shows that line. `text` is the
/// whole of `file`; errors of other files, without a key, or of a part that does not have the key stay where
/// they are.
void locate_values(std::vector<InputError>& errors, std::string_view file, std::string_view text);

} // namespace rillwatt
