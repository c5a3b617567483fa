#pragma once

#include "rillwatt/document/document.hpp"

namespace rillwatt {

/// Counts values, nesting and parts of dotted keys before anything is built from them. Empty when the text
/// stays within the limits.
std::optional<InputError> exceeded_limit(std::string_view text, const FileName& file,
                                         const DocumentLimits& limits);

} // namespace rillwatt
