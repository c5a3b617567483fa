#pragma once

#include "rillwatt/finding/input_error.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// The lines of a text whatever ends them (CR LF, LF or CR), without a byte order mark, up to an end-of-file
/// character (0x1A) that old editors left behind.
std::vector<std::string_view> text_lines(std::string_view text);

std::string_view trimmed(std::string_view text);

/// The same letters in capitals (ASCII only).
std::string capitals(std::string_view text);

/// A finite decimal number that fills the whole text, a leading plus sign allowed.
std::optional<double> finite_number(std::string_view text);

/// A word of a file and where it stands.
struct Word {
    std::string_view text;
    int line = 0;
};

/// Words from line index `first` on, separated by white space and commas.
std::vector<Word> words_from(const std::vector<std::string_view>& lines, std::size_t first);

/// A word as it can be shown in a message: short, control characters and foreign bytes replaced.
std::string shown(std::string_view text);

} // namespace rillwatt
