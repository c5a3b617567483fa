#pragma once

#include "rillwatt/document/document.hpp"

namespace rillwatt {

/// Reads all of TOML 1.0 by the TOML library into `memory`, and words its syntax errors.
LoadResult<Table> read_toml_by_library(std::string_view text, const FileName& file, DocumentMemory& memory);

} // namespace rillwatt
