#include "rillwatt/text/escape.hpp"

#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <cmath>

namespace rillwatt {

namespace {

bool starts_a_formula(std::string_view text) {
    return !text.empty() && std::string_view("=+-@\t\r\n").find(text.front()) != std::string_view::npos;
}

/// Spreadsheets trim leading blanks before they look for a formula.
bool reads_as_formula(std::string_view text) {
    const auto first = text.find_first_not_of(' ');
    return first != std::string_view::npos && starts_a_formula(text.substr(first));
}

/// XML 1.0 (2.2, Char) has no control characters but tab and line ends, no surrogates, no U+FFFE and no
/// U+FFFF. Of these only the last two are left in printable text; each becomes the replacement character.
std::string of_xml_characters(std::string text) {
    for (const std::string_view forbidden : {"\xEF\xBF\xBE", "\xEF\xBF\xBF"})
        for (std::size_t at = text.find(forbidden); at != std::string::npos; at = text.find(forbidden, at))
            text.replace(at, forbidden.size(), "\xEF\xBF\xBD");
    return text;
}

} // namespace

std::string html_text(std::string_view text) {
    std::string safe;
    for (const char c : of_xml_characters(printable(text))) {
        switch (c) {
        case '&':
            safe += "&amp;";
            break;
        case '<':
            safe += "&lt;";
            break;
        case '>':
            safe += "&gt;";
            break;
        case '"':
            safe += "&quot;";
            break;
        case '\'':
            safe += "&#39;";
            break;
        default:
            safe += c;
        }
    }
    return safe;
}

std::string csv_text(std::string_view text) {
    std::string cell = printable(text);
    if (reads_as_formula(text) || reads_as_formula(cell)) cell.insert(0, 1, '\'');
    if (cell.find_first_of(",\"\r\n") == std::string::npos) return cell;
    std::string quoted = "\"";
    for (const char c : cell) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

std::string csv_number(double value, int decimals) {
    return std::isfinite(value) ? trimmed_text(value, decimals) : std::string();
}

std::string part_attribute(std::string_view id) { return " data-part=\"" + html_text(id) + "\""; }

} // namespace rillwatt
