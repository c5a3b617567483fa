#include "rillwatt/text/schema_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace rillwatt {

namespace {

constexpr std::size_t key_column = 26;

/// What a key takes, without what the head of the page says once.
std::string takes(const FieldSpec& field, bool bare_lengths) {
    const bool free_text = field.kind == FieldKind::id && field.target_words.empty();
    if (free_text || field.kind == FieldKind::text) return "text";
    if (field.kind == FieldKind::point) return "a point";
    if (field.kind == FieldKind::space_point) return "[x, y] or [x, y, z]";
    if (field.kind == FieldKind::table) return "a table";
    const std::string words = expected_words(field, bare_lengths);
    return words.substr(0, words.find(", such as"));
}

std::string left_out(const FieldSpec& field, const KeyWords* words) {
    if (field.required) return "required";
    if (words == nullptr || words->otherwise.empty()) return "may be left out";
    return fmt::format("else {}", words->otherwise);
}

std::string sentence(std::string_view words) {
    std::string text(words);
    if (!text.empty())
        text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
    return text;
}

std::string key_text(const TableSpec& table, const FieldSpec& field, bool bare_lengths,
                     const TextStyle& style) {
    const KeyWords* words = key_words(table_heading(table), field.key);
    const std::string says = words == nullptr ? "" : sentence(words->says) + ". ";
    std::string first = fmt::format("  {}", field.key);
    first.resize(std::max(first.size() + 1, key_column), ' ');
    return wrapped(
        fmt::format("{}{}; {}.", says, sentence(takes(field, bare_lengths)), left_out(field, words)),
        style.width, first, std::string(key_column, ' '));
}

std::string table_text(const TableSpec& table, bool bare_lengths, const TextStyle& style) {
    std::string heading = table.name.empty() ? "at the top of the file" : table_heading(table);
    if (table.repeated) heading += "  once for each";
    if (table.nested) heading += "  as a value { key = value, ... }";
    std::string text = inked(style, Ink::heading, heading) + '\n';
    for (const FieldSpec& field : table.fields)
        text += key_text(table, field, bare_lengths, style);
    return text;
}

std::string units_text(bool bare_lengths, const TextStyle& style) {
    const char* bare = bare_lengths ? "a bare number in `units` of the site, or text with its unit"
                                    : "always text with its unit, for a catalog serves every site";
    std::string text =
        wrapped(fmt::format("A length is {}: \"35 ft\", \"12 ft 6 in\", \"12' 6\\\"\", \"4.5 m\", "
                            "\"450 mm\". A temperature is text, \"75 C\" or \"167 F\", or a bare number in "
                            "Celsius. Other numbers are bare, in the unit that is named.",
                            bare),
                style.width, "", "");
    if (!bare_lengths) return text;
    return text +
           wrapped("A point is [x, y], each a length, x to the right and y up on the plan; or a point taped "
                   "from two marks, as said at the end.",
                   style.width, "", "");
}

} // namespace

std::string table_heading(const TableSpec& table) {
    if (table.name.empty() || table.nested) return std::string(table.name);
    if (table.repeated) return fmt::format("[[{}]]", table.name);
    return table.named ? fmt::format("[{}.ID]", table.name) : fmt::format("[{}]", table.name);
}

std::string schema_text(const std::vector<TableSpec>& tables, const TextStyle& style) {
    const bool bare_lengths =
        std::none_of(tables.begin(), tables.end(), [](const TableSpec& t) { return t.named; });
    std::string text = units_text(bare_lengths, style);
    for (const TableSpec& table : tables)
        text += '\n' + table_text(table, bare_lengths, style);
    return text;
}

} // namespace rillwatt
