#include "rillwatt/report/json_writer.hpp"

#include "rillwatt/report/utf8.hpp"

#include <array>
#include <charconv>
#include <cmath>

namespace rillwatt {

namespace {

template<class Number>
void append_number(std::string& out, Number number) {
    std::array<char, 32> digits{};
    const auto result = std::to_chars(digits.data(), digits.data() + digits.size(), number);
    out.append(digits.data(), result.ptr);
}

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

void JsonWriter::begin(char opening, char closing, Set set) {
    before_value();
    const bool inside_line = !levels_.empty() && levels_.back().set == Set::line;
    out_ += opening;
    levels_.push_back({closing, inside_line ? Set::line : set, true});
}

void JsonWriter::end() {
    const Level level = levels_.back();
    levels_.pop_back();
    if (!level.empty) {
        if (level.set == Set::lines)
            new_line();
        else if (level.closing == '}')
            out_ += ' ';
    }
    out_ += level.closing;
    if (levels_.empty()) out_ += '\n';
}

void JsonWriter::key(std::string_view name) {
    separate();
    append_json_string(out_, name);
    out_ += ": ";
    after_key_ = true;
}

void JsonWriter::value(std::string_view text) {
    before_value();
    append_json_string(out_, text);
}

void JsonWriter::value(double number) {
    if (!std::isfinite(number)) return null();
    before_value();
    append_number(out_, number == 0 ? 0.0 : number); // no "-0"
}

void JsonWriter::value(int number) {
    before_value();
    append_number(out_, number);
}

void JsonWriter::value(std::size_t number) {
    before_value();
    append_number(out_, number);
}

void JsonWriter::value(bool truth) {
    before_value();
    out_ += truth ? "true" : "false";
}

void JsonWriter::null() {
    before_value();
    out_ += "null";
}

void JsonWriter::member_or_null(std::string_view name, std::string_view text) {
    key(name);
    if (text.empty())
        null();
    else
        value(text);
}

std::string JsonWriter::take() { return std::move(out_); }

void JsonWriter::before_value() {
    if (after_key_)
        after_key_ = false;
    else
        separate();
}

void JsonWriter::separate() {
    if (levels_.empty()) return;
    Level& level = levels_.back();
    if (!level.empty) out_ += ',';
    if (level.set == Set::lines)
        new_line();
    else if (!level.empty || level.closing == '}')
        out_ += ' ';
    level.empty = false;
}

void JsonWriter::new_line() {
    out_ += '\n';
    out_.append(2 * levels_.size(), ' ');
}

} // namespace rillwatt
