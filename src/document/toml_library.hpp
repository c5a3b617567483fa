#pragma once

#include "rillwatt/document/document.hpp"

namespace rillwatt {

/// Reads all of TOML 1.0 by the TOML library, and words its syntax errors.
LoadResult<Table> read_toml_by_library(std::string_view text, const std::string& file);

} // namespace rillwatt
