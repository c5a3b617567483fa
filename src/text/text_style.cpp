#include "rillwatt/text/text_style.hpp"

#include "rillwatt/text/utf8.hpp"

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

/// A piece of a text without blanks and the columns it takes.
struct Word {
    std::string_view text;
    std::size_t columns = 0;
};

/// Words longer than `longest` come in pieces.
std::vector<Word> words_of(std::string_view text, std::size_t longest) {
    std::vector<Word> words;
    words.reserve(text.size() / 4);
    while (!text.empty()) {
        const std::size_t space = text.find(' ');
        Word word{text.substr(0, space), display_width(text.substr(0, space))};
        while (word.columns > longest) {
            const std::size_t bytes = bytes_within(word.text, longest);
            words.push_back({word.text.substr(0, bytes), display_width(word.text.substr(0, bytes))});
            word.text.remove_prefix(bytes);
            word.columns = display_width(word.text);
        }
        if (!word.text.empty()) words.push_back(word);
        if (space == std::string_view::npos) break;
        text.remove_prefix(space + 1);
    }
    return words;
}

/// Whether a word is a unit that belongs to the number before it.
bool is_unit(std::string_view word) {
    while (!word.empty() && std::string_view(".,;:)").find(word.back()) != std::string_view::npos)
        word.remove_suffix(1);
    constexpr std::array<std::string_view, 14> units = {"V",  "A", "VA", "W",  "C",   "%",   "ft",
                                                        "in", "m", "mm", "mA", "ohm", "lux", "AWG"};
    constexpr std::size_t longest = 3;
    return word.size() <= longest && std::find(units.begin(), units.end(), word) != units.end();
}

/// Whether a line must not break between two words: a number keeps its unit.
bool stay_together(const Word& word, const Word& next) {
    return !word.text.empty() && word.text.back() >= '0' && word.text.back() <= '9' && is_unit(next.text);
}

} // namespace

std::string inked(const TextStyle& style, Ink ink, std::string_view text) {
    if (!style.colour || ink == Ink::plain || text.empty()) return std::string(text);
    return std::string(colour_code(ink)) + std::string(text) + "\x1b[0m";
}

std::string wrapped(std::string_view text, std::size_t width, std::string_view first, std::string_view rest) {
    const std::size_t first_columns = display_width(first);
    const std::size_t rest_columns = display_width(rest);
    const std::size_t indent = std::max(first_columns, rest_columns);
    const std::vector<Word> words = words_of(text, width > indent + 8 ? width - indent : 8);
    std::string out(first);
    out.reserve(first.size() + text.size() + text.size() / 32 * rest.size() + rest.size() + 2);
    std::size_t column = first_columns;
    bool line_start = true;
    bool glued = false; // to the word before
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool holds_next = i + 1 < words.size() && stay_together(words[i], words[i + 1]);
        const std::size_t needed =
            words[i].columns + (line_start ? 0 : 1) + (holds_next ? 1 + words[i + 1].columns : 0);
        if (!line_start && !glued && column + needed > width) {
            out += '\n';
            out += rest;
            column = rest_columns;
            line_start = true;
        }
        if (!line_start) out += ' ';
        out += words[i].text;
        column += words[i].columns + (line_start ? 0 : 1);
        line_start = false;
        glued = holds_next;
    }
    out += '\n';
    return out;
}

} // namespace rillwatt
