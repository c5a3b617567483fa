#include "rillwatt/document/document.hpp"

#include "document_limits.hpp"

// The one place that includes the TOML library: header-only, so that the program depends on no further shared
// library, and with errors as results.
#define TOML_HEADER_ONLY 1
#define TOML_EXCEPTIONS 0
#define TOML_ENABLE_FORMATTERS 0
#define TOML_ENABLE_UNRELEASED_FEATURES 0
#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>

namespace rillwatt {
namespace {

int line_of(const toml::node& node) { return static_cast<int>(node.source().begin.line); }

Value converted(toml::node& node);

Array converted_items(toml::array& array) {
    Array items;
    items.reserve(array.size());
    for (toml::node& item : array)
        items.push_back(converted(item));
    return items;
}

/// The library sorts keys by name; the file's order is put back.
Table converted_entries(toml::table& table) {
    struct Position {
        toml::source_position at;
        Entry entry;
    };
    std::vector<Position> positions;
    positions.reserve(table.size());
    for (auto&& [key, node] : table) {
        const toml::source_position at = key.source().begin;
        positions.push_back({at, {std::string(key.str()), static_cast<int>(at.line), converted(node)}});
    }
    std::sort(positions.begin(), positions.end(),
              [](const Position& a, const Position& b) { return a.at < b.at; });
    Table result;
    result.entries.reserve(positions.size());
    for (Position& position : positions)
        result.entries.push_back(std::move(position.entry));
    return result;
}

/// Takes the strings out of the library's tree rather than copying them.
Value converted(toml::node& node) {
    const int line = line_of(node);
    switch (node.type()) {
    case toml::node_type::string:
        return {std::move(node.as_string()->get()), line};
    case toml::node_type::integer:
        return {node.as_integer()->get(), line};
    case toml::node_type::floating_point:
        return {node.as_floating_point()->get(), line};
    case toml::node_type::boolean:
        return {node.as_boolean()->get(), line};
    case toml::node_type::array:
        return {converted_items(*node.as_array()), line};
    case toml::node_type::table:
        return {converted_entries(*node.as_table()), line};
    default:
        return {DateOrTime{}, line};
    }
}

InputError syntax_error(const toml::parse_error& error, std::string_view text, const std::string& file) {
    const int line = std::max(1, static_cast<int>(error.source().begin.line));
    std::vector<InputError> errors{
        {{file, line}, fmt::format("not TOML: {}", printable(error.description())), "TOML 1.0", {}}};
    add_source_lines(errors, file, text);
    return errors.front();
}

} // namespace

LoadResult<Document> parse_document(std::string_view text, const std::string& file,
                                    const DocumentLimits& limits) {
    if (std::optional<InputError> error = exceeded_limit(text, file, limits))
        return {{}, {std::move(*error)}};
    toml::parse_result result = toml::parse(text);
    if (!result) return {{}, {syntax_error(result.error(), text, file)}};
    return {Document(file, text, converted_entries(result.table())), {}};
}

} // namespace rillwatt
