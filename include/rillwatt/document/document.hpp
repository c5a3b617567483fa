#pragma once

#include "rillwatt/finding/input_error.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace rillwatt {

struct Value;
struct Entry;

using Array = std::vector<Value>;

/// The keys of a table, in the order of the file.
struct Table {
    std::vector<Entry> entries;

    /// The value of a key, or null.
    const Value* find(std::string_view key) const;
};

/// A date or a time: TOML has them, no file of ours does.
struct DateOrTime {
    friend bool operator==(DateOrTime, DateOrTime) = default;
};

/// One value of a TOML file and the line it begins on.
struct Value {
    std::variant<std::string, std::int64_t, double, bool, Array, Table, DateOrTime> data;
    int line = 0;

    const std::string* text() const { return std::get_if<std::string>(&data); }
    const bool* boolean() const { return std::get_if<bool>(&data); }
    const Array* array() const { return std::get_if<Array>(&data); }
    const Table* table() const { return std::get_if<Table>(&data); }
    /// Whole and fractional numbers alike; may be infinite or not a number.
    std::optional<double> number() const;
};

struct Entry {
    std::string key;
    int line = 0; ///< of the key; of the header for `[table]`
    Value value;
};

/// Whether two values say the same, wherever they stand; the order of keys does not matter.
bool same_content(const Value& a, const Value& b);

/// A TOML file as read: values with their lines, and the text itself for showing lines in errors.
class Document {
  public:
    Document(std::string file, std::string_view text, Table root);

    const std::string& file() const { return file_; }
    const Table& root() const { return root_; }
    /// A line as written, without its end, cut where it is too long to display; empty when there is none.
    std::string source_line(int line) const;
    int line_count() const { return static_cast<int>(line_starts_.size()); }

  private:
    std::string file_;
    std::string text_;
    std::vector<std::uint32_t> line_starts_;
    Table root_;
};

/// Bounds on what is read at all. Real gardens stay far below; beyond them memory would not be bounded.
struct DocumentLimits {
    std::size_t bytes = 16u << 20;  ///< of the whole file
    std::size_t values = 1'000'000; ///< keys and list items together
    std::size_t nesting = 64;       ///< lists and tables within each other
    std::size_t dotted_keys = 32;   ///< parts of one dotted key or table header
};

/// Reads TOML 1.0. A syntax error stands alone: nothing after it can be trusted.
LoadResult<Document> parse_document(std::string_view text, const std::string& file,
                                    const DocumentLimits& limits = {});

} // namespace rillwatt
