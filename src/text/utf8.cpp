#include "rillwatt/text/utf8.hpp"

#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/quantity/plain_ascii.hpp"

#include <algorithm>
#include <array>

namespace rillwatt {

namespace {

struct Range {
    char32_t first;
    char32_t last;
};

// Characters that take no column: combining marks, joiners, direction marks, variation selectors.
constexpr std::array no_column{
    Range{0x0300, 0x036F}, Range{0x0483, 0x0489}, Range{0x0591, 0x05BD}, Range{0x064B, 0x065F},
    Range{0x1AB0, 0x1AFF}, Range{0x1DC0, 0x1DFF}, Range{0x200B, 0x200F}, Range{0x202A, 0x202E},
    Range{0x2060, 0x2064}, Range{0x2066, 0x2069}, Range{0x20D0, 0x20FF}, Range{0xFE00, 0xFE0F},
    Range{0xFE20, 0xFE2F}, Range{0xFEFF, 0xFEFF},
};

// Characters that take two: the wide and full-width blocks of Unicode annex 11, and pictographs.
constexpr std::array two_columns{
    Range{0x1100, 0x115F},   Range{0x2E80, 0x303E},   Range{0x3041, 0xA4CF},   Range{0xAC00, 0xD7A3},
    Range{0xF900, 0xFAFF},   Range{0xFE30, 0xFE6F},   Range{0xFF00, 0xFF60},   Range{0xFFE0, 0xFFE6},
    Range{0x1F300, 0x1F64F}, Range{0x1F680, 0x1F6FF}, Range{0x1F900, 0x1FAFF}, Range{0x20000, 0x3FFFD},
};

template<std::size_t N>
bool among(const std::array<Range, N>& ranges, char32_t code) {
    return std::any_of(ranges.begin(), ranges.end(),
                       [code](Range range) { return code >= range.first && code <= range.last; });
}

std::size_t columns_of(char32_t code) {
    if (code < 0x300 || (code >= 0x2100 && code < 0x2E80)) return 1; // letters; arrows, lines, boxes
    if (among(no_column, code)) return 0;
    return among(two_columns, code) ? 2 : 1;
}

// Length a first byte announces, and the lowest code point that may be written with that length.
struct Announced {
    std::size_t bytes = 0; // 0: starts no character
    char32_t bits = 0;
    char32_t lowest = 0;
};

Announced announced_by(unsigned char first) {
    if (first >= 0xC2 && first < 0xE0) return {2, first & 0x1Fu, 0x80};
    if (first >= 0xE0 && first < 0xF0) return {3, first & 0x0Fu, 0x800};
    if (first >= 0xF0 && first < 0xF5) return {4, first & 0x07u, 0x10000};
    return {};
}

} // namespace

Utf8Character utf8_character(std::string_view text, std::size_t at) {
    const auto first = static_cast<unsigned char>(text[at]);
    if (first < 0x80) return {first, 1, true};
    const Utf8Character broken{first, 1, false};
    const Announced announced = announced_by(first);
    if (announced.bytes == 0 || at + announced.bytes > text.size()) return broken;
    char32_t code = announced.bits;
    for (std::size_t i = 1; i < announced.bytes; ++i) {
        const auto byte = static_cast<unsigned char>(text[at + i]);
        if ((byte & 0xC0u) != 0x80u) return broken;
        code = (code << 6) | (byte & 0x3Fu);
    }
    const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
    if (code < announced.lowest || code > 0x10FFFF || surrogate) return broken;
    return {code, announced.bytes, true};
}

std::size_t display_width(std::string_view text) {
    if (is_plain_ascii(text)) return text.size();
    std::size_t width = 0;
    for (std::size_t at = 0; at < text.size();) {
        const Utf8Character character = utf8_character(text, at);
        width += columns_of(character.code);
        at += character.bytes;
    }
    return width;
}

ShownText shown(std::string_view text, std::string& room) {
    if (is_plain_ascii(text)) return {text, text.size()};
    room = printable(text);
    return {room, display_width(room)};
}

std::string clipped(std::string_view text, std::size_t columns) {
    if (display_width(text) <= columns) return std::string(text);
    if (columns == 0) return {};
    std::size_t width = 0;
    std::size_t at = 0;
    while (at < text.size()) {
        const Utf8Character character = utf8_character(text, at);
        if (width + columns_of(character.code) > columns - 1) break;
        width += columns_of(character.code);
        at += character.bytes;
    }
    return std::string(text.substr(0, at)) + "…";
}

std::string padded_right(std::string_view text, std::size_t columns) {
    std::string padded;
    append_padded_right(padded, text, columns);
    return padded;
}

std::string padded_left(std::string_view text, std::size_t columns) {
    std::string padded;
    append_padded_left(padded, text, columns);
    return padded;
}

void append_padded_right(std::string& out, std::string_view text, std::size_t columns) {
    const std::size_t width = display_width(text);
    out += text;
    if (width < columns) out.append(columns - width, ' ');
}

void append_padded_left(std::string& out, std::string_view text, std::size_t columns) {
    const std::size_t width = display_width(text);
    if (width < columns) out.append(columns - width, ' ');
    out += text;
}

} // namespace rillwatt
