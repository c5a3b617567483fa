#include "rillwatt/document/value_reader.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rillwatt {
namespace {

/// After so many errors nobody reads on, and memory must stay bounded.
constexpr std::size_t most_errors = 1000;

/// Text of a message, printable and not longer than a line.
std::string shown_text(std::string_view text) {
    constexpr std::size_t longest = 60;
    if (text.size() <= longest) return printable(text);
    std::size_t end = longest;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0u) == 0x80u)
        --end;
    return printable(text.substr(0, end)) + "...";
}

std::string nearest_words(std::string_view word, const std::vector<std::string>& candidates) {
    const std::optional<std::string> nearest = nearest_spelling(word, candidates);
    return nearest ? fmt::format("; nearest is `{}`", printable(*nearest)) : std::string();
}

std::string listed(const std::vector<std::string>& keys) {
    std::string words;
    for (const std::string& key : keys)
        words += fmt::format("{}`{}`", words.empty() ? "" : ", ", key);
    return words;
}

} // namespace

std::string shown_id(std::string_view id) { return fmt::format("`{}`", shown_text(id)); }

std::string shown_value(const Value& value) {
    if (const std::string_view* text = value.text()) return fmt::format("\"{}\"", shown_text(*text));
    if (const auto* whole = std::get_if<std::int64_t>(&value.data)) return fmt::format("{}", *whole);
    if (const std::optional<double> number = value.number()) return fmt::format("{}", *number);
    if (const bool* boolean = value.boolean()) return *boolean ? "true" : "false";
    if (const Array* items = value.array())
        return items->empty() ? std::string("an empty list") : fmt::format("a list of {}", items->size());
    return value.table() != nullptr ? "a table" : "a date or a time";
}

void ValueReader::error(int line, std::string found, std::string expected) {
    if (errors_.size() > most_errors) return;
    if (errors_.size() == most_errors) {
        errors_.push_back({{document_.file(), line}, "too many errors", "fewer: the rest is not listed", {}});
        return;
    }
    errors_.push_back({{document_.file(), line}, std::move(found), std::move(expected), {}});
}

void ValueReader::wrong_value(const FieldSpec& field, const Value& value) {
    std::string expected = expected_words(field, bare_lengths_.has_value());
    if (const std::string_view* text = value.text(); text != nullptr && field.kind == FieldKind::choice)
        expected += nearest_words(*text, {field.choices.begin(), field.choices.end()});
    error(value.line, fmt::format("`{}` is {}", field.key, shown_value(value)), std::move(expected));
}

void ValueReader::unknown_key(const Entry& entry, const std::vector<std::string>& known) {
    error(entry.line, fmt::format("unknown key {}", shown_id(entry.key)),
          fmt::format("one of {}{}", listed(known), nearest_words(entry.key, known)));
}

void ValueReader::missing_key(int line, std::string_view table, const FieldSpec& field) {
    error(line, fmt::format("`{}` without `{}`", table, field.key),
          fmt::format("`{}`: {}", field.key, expected_words(field, bare_lengths_.has_value())));
}

std::vector<InputError> ValueReader::take_errors() {
    std::stable_sort(errors_.begin(), errors_.end(), [](const InputError& a, const InputError& b) {
        return a.location.line < b.location.line;
    });
    add_source_lines(errors_, document_.file(), document_.text());
    return std::move(errors_);
}

} // namespace rillwatt
