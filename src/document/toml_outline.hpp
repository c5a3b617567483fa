#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// Bytes from `begin` up to, not including, `end`.
struct TextRange {
    std::size_t begin = 0;
    std::size_t end = 0;
};

/// A key that belongs to a table directly and where its value stands. `a.b = 1` counts as a key `a` without
/// value.
struct KeySpan {
    std::string key;
    bool dotted = false;
    TextRange value;
};

/// Where one table of a TOML text is written: below a `[name]` or `[[name]]` header, or as an inline table in
/// `name = [ { ... } ]`. Headers of more than one part have an empty name.
struct TableSpan {
    std::string name;
    bool repeated = false;
    bool is_inline = false;
    std::vector<KeySpan> keys;
    std::size_t open = 0;       ///< just behind the header's line content, or behind the `{`
    std::size_t line_begin = 0; ///< of the line that new keys should be indented like
};

/// The tables of a text that is known to be valid TOML, in the order of the text. Byte positions are exact
/// whatever characters the text contains.
std::vector<TableSpan> outlined_tables(std::string_view text);

} // namespace rillwatt
