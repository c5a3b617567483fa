#include "toml_library.hpp"

#include "syntax_words.hpp"

// The one place that includes the TOML library: header-only, so that the program depends on no further shared
// library. Version 3.3 asserts on some malformed values (`a = ]`), and in optimised builds runs into
// undefined behaviour there: its assertions are kept in every build and made exceptions.
#undef NDEBUG
namespace {
struct BrokenAssumption {};
[[noreturn]] void assumption_broken() { throw BrokenAssumption{}; }
} // namespace
#define TOML_ASSERT(condition) static_cast<void>((condition) || (assumption_broken(), false))
#define TOML_HEADER_ONLY 1
#define TOML_EXCEPTIONS 1
#define TOML_ENABLE_FORMATTERS 0
#define TOML_ENABLE_UNRELEASED_FEATURES 0
#include <fmt/format.h>
#include <toml++/toml.h>

#include "document_memory.hpp"
#include <algorithm>

namespace rillwatt {
namespace {

int line_of(const toml::node& node) { return static_cast<int>(node.source().begin.line); }

Value converted(const toml::node& node, DocumentMemory& memory);

Array converted_items(const toml::array& array, DocumentMemory& memory) {
    std::vector<Value> items;
    items.reserve(array.size());
    for (const toml::node& item : array)
        items.push_back(converted(item, memory));
    return memory.keep(std::span<const Value>(items));
}

/// The library sorts keys by name; the file's order is put back.
Table converted_entries(const toml::table& table, DocumentMemory& memory) {
    struct Position {
        toml::source_position at;
        Entry entry;
    };
    std::vector<Position> positions;
    positions.reserve(table.size());
    for (auto&& [key, node] : table) {
        const toml::source_position at = key.source().begin;
        positions.push_back(
            {at, {memory.keep(key.str()), converted(node, memory), static_cast<int>(at.line)}});
    }
    std::sort(positions.begin(), positions.end(),
              [](const Position& a, const Position& b) { return a.at < b.at; });
    std::vector<Entry> entries;
    entries.reserve(positions.size());
    for (const Position& position : positions)
        entries.push_back(position.entry);
    return {memory.keep(std::span<const Entry>(entries))};
}

Value converted(const toml::node& node, DocumentMemory& memory) {
    const int line = line_of(node);
    switch (node.type()) {
    case toml::node_type::string:
        return {memory.keep(std::string_view(node.as_string()->get())), line};
    case toml::node_type::integer:
        return {node.as_integer()->get(), line};
    case toml::node_type::floating_point:
        return {node.as_floating_point()->get(), line};
    case toml::node_type::boolean:
        return {node.as_boolean()->get(), line};
    case toml::node_type::array:
        return {converted_items(*node.as_array(), memory), line};
    case toml::node_type::table:
        return {converted_entries(*node.as_table(), memory), line};
    default:
        return {DateOrTime{}, line};
    }
}

InputError syntax_error(std::string_view what, int line, std::string_view text, const FileName& file) {
    std::vector<InputError> errors{{{file, line}, {}, {}, {}}};
    add_source_lines(errors, file, text);
    const SyntaxWords words = syntax_words(what, errors.front().source_line);
    errors.front().found = "not TOML: " + words.found;
    errors.front().expected = words.expected;
    return errors.front();
}

bool breaks_assumption(std::string_view text) {
    try {
        static_cast<void>(toml::parse(text));
    } catch (const toml::parse_error&) {
    } catch (const BrokenAssumption&) {
        return true;
    }
    return false;
}

/// The line at which an assumption breaks. The parser reads from front to back, so it is the last line of the
/// shortest beginning of the text in which one does.
int malformed_line(std::string_view text) {
    std::vector<std::size_t> line_ends;
    for (std::size_t i = 0; i < text.size(); ++i)
        if (text[i] == '\n') line_ends.push_back(i + 1);
    const auto first = std::partition_point(line_ends.begin(), line_ends.end(), [&](std::size_t end) {
        return !breaks_assumption(text.substr(0, end));
    });
    return 1 + static_cast<int>(first - line_ends.begin());
}

} // namespace

LoadResult<Table> read_toml_by_library(std::string_view text, const FileName& file, DocumentMemory& memory) {
    try {
        return {converted_entries(toml::parse(text), memory), {}};
    } catch (const toml::parse_error& error) {
        const auto line = static_cast<int>(error.source().begin.line);
        return {{}, {syntax_error(error.description(), std::max(1, line), text, file)}};
    } catch (const BrokenAssumption&) {
        return {{}, {syntax_error("a value is missing or malformed", malformed_line(text), text, file)}};
    }
}

} // namespace rillwatt
