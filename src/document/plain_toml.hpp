#pragma once

#include "rillwatt/document/document.hpp"

namespace rillwatt {

/// Lists and tables within each other, and parts of a header, beyond which a text is no plain one.
inline constexpr std::size_t plain_toml_nesting = 8;

/// Reads the plain part of TOML that nearly every site file consists of: tables, bare and quoted keys,
/// strings on one line without unusual escapes, decimal numbers, booleans, lists and inline tables. Empty at
/// the first thing beyond that, and at anything that might be an error: then the TOML library decides, which
/// knows all of the language but takes several times as long on sites of thousands of lights. `text` must lie
/// in `memory`; what is read refers to it.
std::optional<Table> read_plain_toml(std::string_view text, DocumentMemory& memory);

} // namespace rillwatt
