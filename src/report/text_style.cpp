#include "rillwatt/report/text_style.hpp"

#include "rillwatt/report/utf8.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace rillwatt {

namespace {

std::string_view colour_code(Ink ink) {
    switch (ink) {
    case Ink::plain:
        return "";
    case Ink::heading:
        return "\x1b[1m";
    case Ink::faint:
        return "\x1b[2m";
    case Ink::error:
        return "\x1b[1;31m";
    case Ink::warning:
        return "\x1b[33m";
    case Ink::note:
        return "\x1b[36m";
    case Ink::good:
        return "\x1b[32m";
    }
    return "";
}

/// Bytes of the longest beginning of a text that takes at most `columns`; at least one character.
std::size_t bytes_within(std::string_view text, std::size_t columns) {
    std::size_t end = utf8_character(text, 0).bytes;
    while (end < text.size()) {
        const std::size_t next = end + utf8_character(text, end).bytes;
        if (display_width(text.substr(0, next)) > columns) break;
        end = next;
    }
    return end;
}

std::vector<std::string_view> words_of(std::string_view text, std::size_t longest) {
    std::vector<std::string_view> words;
    while (!text.empty()) {
        const std::size_t space = text.find(' ');
        std::string_view word = text.substr(0, space);
        while (display_width(word) > longest) {
            const std::size_t bytes = bytes_within(word, longest);
            words.push_back(word.substr(0, bytes));
            word.remove_prefix(bytes);
        }
        if (!word.empty()) words.push_back(word);
        if (space == std::string_view::npos) break;
        text.remove_prefix(space + 1);
    }
    return words;
}

/// Whether a word is a unit that belongs to the number before it.
bool is_unit(std::string_view word) {
    while (!word.empty() && std::string_view(".,;:)").find(word.back()) != std::string_view::npos)
        word.remove_suffix(1);
    constexpr std::array units = {"V",  "A", "VA", "W",  "C",   "%",   "ft",
                                  "in", "m", "mm", "mA", "ohm", "lux", "AWG"};
    return std::find(units.begin(), units.end(), word) != units.end();
}

/// Whether a line must not break between two words: a number keeps its unit.
bool stay_together(std::string_view word, std::string_view next) {
    return !word.empty() && word.back() >= '0' && word.back() <= '9' && is_unit(next);
}

} // namespace

std::string inked(const TextStyle& style, Ink ink, std::string_view text) {
    if (!style.colour || ink == Ink::plain || text.empty()) return std::string(text);
    return std::string(colour_code(ink)) + std::string(text) + "\x1b[0m";
}

std::string wrapped(std::string_view text, std::size_t width, std::string_view first, std::string_view rest) {
    const std::size_t indent = std::max(display_width(first), display_width(rest));
    const std::size_t longest = width > indent + 8 ? width - indent : 8;
    std::string out(first);
    std::size_t column = display_width(first);
    bool line_start = true;
    const std::vector<std::string_view> words = words_of(text, longest);
    for (std::size_t i = 0; i < words.size(); ++i) {
        std::size_t needed = display_width(words[i]) + (line_start ? 0 : 1);
        if (i + 1 < words.size() && stay_together(words[i], words[i + 1]))
            needed += 1 + display_width(words[i + 1]);
        const bool glued = i > 0 && stay_together(words[i - 1], words[i]);
        if (!line_start && !glued && column + needed > width) {
            out += '\n';
            out += rest;
            column = display_width(rest);
            line_start = true;
        }
        if (!line_start) out += ' ';
        out += words[i];
        column += display_width(words[i]) + (line_start ? 0 : 1);
        line_start = false;
    }
    out += '\n';
    return out;
}

} // namespace rillwatt
