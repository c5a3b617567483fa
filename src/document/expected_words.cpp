#include "rillwatt/document/field.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <cmath>

namespace rillwatt {
namespace {

std::string with_unit(double number, std::string_view unit) {
    const std::string text = trimmed_text(number, 6);
    return unit.empty() || unit == "%" ? text : fmt::format("{} {}", text, unit);
}

std::string metres_words(double metres) {
    if (std::abs(metres) >= 1000) return trimmed_text(metres / 1000, 3) + " km";
    return metres == 0 ? "0" : trimmed_text(metres, 4) + " m";
}

/// " from 0 to 24 h", " above 0 and at most 1000 V", or nothing.
std::string range_words(const FieldSpec& field) {
    const auto words = [&](double number) {
        if (field.kind == FieldKind::length || field.kind == FieldKind::length_list)
            return metres_words(number);
        if (field.kind == FieldKind::temperature) return trimmed_text(number, 1) + " C";
        return with_unit(number, field.unit);
    };
    const FieldRange& range = field.range;
    const bool low = std::isfinite(range.low);
    const bool high = std::isfinite(range.high);
    if (low && range.low == range.high) return ": " + words(range.low);
    if (low && high && !range.above_low)
        return fmt::format(" from {} to {}", range.low == 0 ? "0" : words(range.low), words(range.high));
    if (low && high)
        return fmt::format(" above {} and at most {}", trimmed_text(range.low, 6), words(range.high));
    if (low) return (range.above_low ? " above " : " of at least ") + words(range.low);
    if (high) return fmt::format(" of at most {}", words(range.high));
    return {};
}

std::string length_words(const FieldSpec& field, bool bare_lengths) {
    if (bare_lengths)
        return fmt::format("a length{}, such as 12.5, \"12 ft 6 in\" or \"3.8 m\"", range_words(field));
    return fmt::format("a length with its unit{}, such as \"12 ft 6 in\" or \"3.8 m\"", range_words(field));
}

std::string choice_words(const FieldSpec& field) {
    std::string words;
    for (const std::string_view choice : field.choices)
        words += fmt::format("{}\"{}\"", words.empty() ? "" : ", ", choice);
    return (field.choices.size() > 1 ? "one of " : "") + words;
}

std::string count_words(const FieldSpec& field, std::string_view item) {
    if (field.least_items == field.most_items) return fmt::format("a list of {} {}", field.least_items, item);
    const bool bounded = field.most_items != std::numeric_limits<std::size_t>::max();
    if (bounded) return fmt::format("a list of {} to {} {}", field.least_items, field.most_items, item);
    if (field.least_items > 0) return fmt::format("a list of at least {} {}", field.least_items, item);
    return fmt::format("a list of {}", item);
}

} // namespace

std::string expected_words(const FieldSpec& field, bool bare_lengths) {
    switch (field.kind) {
    case FieldKind::id:
        return field.target_words.empty()
                   ? fmt::format("printable text that is not empty, of at most {} bytes", field.most_bytes)
                   : fmt::format("the id of {}", field.target_words);
    case FieldKind::text:
        return "text";
    case FieldKind::reference:
        return fmt::format("the id of {}", field.target_words);
    case FieldKind::boolean:
        return "true or false";
    case FieldKind::whole_number:
        return "a whole number" + range_words(field);
    case FieldKind::number:
    case FieldKind::percent:
        return "a number" + range_words(field);
    case FieldKind::length:
        return length_words(field, bare_lengths);
    case FieldKind::temperature:
        return fmt::format("a temperature{}, such as \"75 C\" or \"167 F\"", range_words(field));
    case FieldKind::choice:
        return choice_words(field);
    case FieldKind::point:
        return "a point: [x, y], each a length of at most 10 km, or { from = [mark, mark], taped = [length, "
               "length], "
               "side = \"left\" }";
    case FieldKind::space_point:
        return "a point: [x, y] or [x, y, z], each a length of at most 10 km";
    case FieldKind::id_list:
        return count_words(field, "texts");
    case FieldKind::reference_list:
        return count_words(field, fmt::format("ids, each of {}", field.target_words));
    case FieldKind::number_list:
        return count_words(field, "numbers") +
               (std::isfinite(field.range.high) ? ", each" + range_words(field) : "");
    case FieldKind::length_list:
        return count_words(field, (bare_lengths ? "lengths, each" : "lengths with their units, each") +
                                      range_words(field));
    case FieldKind::point_list:
        return count_words(field, "points");
    case FieldKind::table:
        return "a table: { key = value, ... }";
    }
    return {};
}

} // namespace rillwatt
