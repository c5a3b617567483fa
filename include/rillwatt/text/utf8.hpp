#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace rillwatt {

/// One character of a UTF-8 text and the bytes it takes. `valid` is false for a byte that starts no
/// well-formed character (Unicode 15, table 3-7); such a byte counts as one character of its own.
struct Utf8Character {
    char32_t code = 0;
    std::size_t bytes = 1;
    bool valid = true;
};

/// The character that starts at `text[at]`; `at` must be inside the text.
Utf8Character utf8_character(std::string_view text, std::size_t at);

/// Terminal columns a text takes: combining marks none, wide East Asian characters and pictographs two.
std::size_t display_width(std::string_view text);

/// A text made printable, and the columns it takes.
struct ShownText {
    std::string_view text;
    std::size_t columns = 0;
};

/// `printable` and `display_width` at once; the text itself where it is printable as it stands, else what
/// `room` is filled with.
ShownText shown(std::string_view text, std::string& room);

/// The text when it fits `columns`, else its beginning with an ellipsis as the last column.
std::string clipped(std::string_view text, std::size_t columns);

/// Text with spaces added at its right or left until it takes `columns`; longer text is left as it is.
std::string padded_right(std::string_view text, std::size_t columns);
std::string padded_left(std::string_view text, std::size_t columns);

/// The same written at the end of `out`.
void append_padded_right(std::string& out, std::string_view text, std::size_t columns);
void append_padded_left(std::string& out, std::string_view text, std::size_t columns);

} // namespace rillwatt
