#pragma once

#include "rillwatt/finding/input_error.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// One key of one part to be set: `key = value` in the `[[table]]` with that id, or, with an empty id, in
/// `[table]`.
struct KeyChange {
    std::string table;
    std::string id;
    std::string key;
    std::string value; ///< as TOML: see `toml_string` and `toml_number`
};

/// A user's file with keys set and text appended, and every other byte as it was: comments, order, spacing,
/// line ends, byte order mark, a missing last line end. A key that is there gets its value replaced, a new
/// one is written on a line of its own below the last key of its part, or into the part's inline table.
///
/// The result is read again and compared with what was asked for: when the two differ in the least, or when a
/// part is written in a way that cannot be edited, the answer is an error and never a damaged file.
LoadResult<std::string> edited_document(std::string_view text, const FileName& file,
                                        const std::vector<KeyChange>& changes,
                                        std::string_view appended = {});

/// A text as a TOML string with its quotes.
std::string toml_string(std::string_view text);

/// A finite number as TOML, with as many digits as it takes to read back the same: `13`, `0.3048`.
std::string toml_number(double number);

} // namespace rillwatt
