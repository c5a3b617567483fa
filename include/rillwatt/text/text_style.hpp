#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace rillwatt {

/// How text output is set. Colour only ever repeats what the words say.
struct TextStyle {
    bool colour = false;
    std::size_t width = 80;
};

/// What a piece of text is, for colouring.
enum class Ink { plain, heading, faint, error, warning, note, good };

/// The text in terminal colour when the style asks for it, else unchanged. Apply after padding: colour codes
/// take no columns but count as characters.
std::string inked(const TextStyle& style, Ink ink, std::string_view text);

/// Text broken at spaces into lines of at most `width` columns; the first line starts with `first`, the
/// others with `rest`. A word longer than a line is broken inside. Every line ends in a newline.
std::string wrapped(std::string_view text, std::size_t width, std::string_view first, std::string_view rest);

} // namespace rillwatt
