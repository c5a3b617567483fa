#include "rillwatt/exchange/json_writer.hpp"

#include "rillwatt/text/utf8.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace rillwatt {

namespace {

/// Whether a character stands in a JSON string as it is.
constexpr std::array<bool, 256> stands_as_it_is = [] {
    std::array<bool, 256> plain{};
    for (std::size_t c = 0x20; c < 0x7F; ++c)
        plain[c] = c != '"' && c != '\\';
    return plain;
}();

void append_unicode_escape(std::string& out, unsigned code) {
    constexpr std::string_view hex = "0123456789abcdef";
    out += "\\u00";
    out += hex[(code >> 4) & 0xFu];
    out += hex[code & 0xFu];
}

void append_ascii(std::string& out, char character) {
    switch (character) {
    case '"':
        out += "\\\"";
        return;
    case '\\':
        out += "\\\\";
        return;
    case '\n':
        out += "\\n";
        return;
    case '\t':
        out += "\\t";
        return;
    case '\r':
        out += "\\r";
        return;
    default:
        break;
    }
    const auto code = static_cast<unsigned char>(character);
    if (code < 0x20 || code == 0x7F)
        append_unicode_escape(out, code);
    else
        out += character;
}

} // namespace

void append_json_string(std::string& out, std::string_view text) {
    out += '"';
    for (std::size_t at = 0; at < text.size();) {
        if (static_cast<unsigned char>(text[at]) < 0x80) {
            append_ascii(out, text[at++]);
            continue;
        }
        const Utf8Character character = utf8_character(text, at);
        if (character.valid)
            out.append(text.substr(at, character.bytes));
        else
            out += "\xEF\xBF\xBD"; // U+FFFD
        at += character.bytes;
    }
    out += '"';
}

void JsonWriter::grow(std::size_t bytes) {
    out_.resize(std::max<std::size_t>(2 * out_.size(), used_ + bytes + 4096));
}

/// Where the next bytes go; the caller writes at most so many and counts them.
inline char* JsonWriter::room_for(std::size_t bytes) {
    if (out_.size() - used_ < bytes) grow(bytes);
    return out_.data() + used_;
}

inline void JsonWriter::write(char character) {
    *room_for(1) = character;
    ++used_;
}

inline void JsonWriter::write(std::string_view text) {
    std::copy(text.begin(), text.end(), room_for(text.size()));
    used_ += text.size();
}

void JsonWriter::write_string(std::string_view text) {
    char* at = room_for(text.size() + 2);
    *at++ = '"';
    for (const char c : text) {
        if (!stands_as_it_is[static_cast<unsigned char>(c)]) return write_escaped(text);
        *at++ = c;
    }
    *at = '"';
    used_ += text.size() + 2;
}

void JsonWriter::write_escaped(std::string_view text) {
    std::string escaped;
    append_json_string(escaped, text);
    write(escaped);
}

template<class Number>
void JsonWriter::write_number(Number number) {
    constexpr std::size_t longest = 32;
    char* const begin = room_for(longest);
    used_ += static_cast<std::size_t>(std::to_chars(begin, begin + longest, number).ptr - begin);
}

void JsonWriter::begin(char opening, char closing, Set set) {
    before_value();
    const bool inside_line = !levels_.empty() && levels_.back().set == Set::line;
    write(opening);
    levels_.push_back({closing, inside_line ? Set::line : set, true});
}

void JsonWriter::end() {
    const Level level = levels_.back();
    levels_.pop_back();
    if (!level.empty) {
        if (level.set == Set::lines)
            new_line();
        else if (level.closing == '}')
            write(' ');
    }
    write(level.closing);
    if (levels_.empty()) write('\n');
}

void JsonWriter::key(std::string_view name) {
    separate();
    write_string(name);
    write(": ");
    after_key_ = true;
}

void JsonWriter::value(std::string_view text) {
    before_value();
    write_string(text);
}

void JsonWriter::value(double number) {
    if (!std::isfinite(number)) return null();
    before_value();
    write_number(number == 0 ? 0.0 : number); // no "-0"
}

void JsonWriter::value(int number) {
    before_value();
    write_number(number);
}

void JsonWriter::value(std::size_t number) {
    before_value();
    write_number(number);
}

void JsonWriter::value(bool truth) {
    before_value();
    write(truth ? std::string_view("true") : std::string_view("false"));
}

void JsonWriter::null() {
    before_value();
    write("null");
}

void JsonWriter::member_or_null(std::string_view name, std::string_view text) {
    key(name);
    if (text.empty())
        null();
    else
        value(text);
}

std::string JsonWriter::take() {
    out_.resize(used_);
    used_ = 0;
    return std::move(out_);
}

void JsonWriter::before_value() {
    if (after_key_)
        after_key_ = false;
    else
        separate();
}

void JsonWriter::separate() {
    if (levels_.empty()) return;
    Level& level = levels_.back();
    if (!level.empty) write(',');
    if (level.set == Set::lines)
        new_line();
    else if (!level.empty || level.closing == '}')
        write(' ');
    level.empty = false;
}

void JsonWriter::new_line() {
    write('\n');
    const std::size_t indent = 2 * levels_.size();
    std::fill_n(room_for(indent), indent, ' ');
    used_ += indent;
}

} // namespace rillwatt
