#pragma once

#include "rillwatt/finding/input_error.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace rillwatt {

class DocumentMemory;
struct Value;
struct Entry;

/// Things laid out one after the other in the memory of a document.
template<class T>
class Slice {
  public:
    Slice() = default;
    Slice(const T* first, std::size_t size) : first_(first), size_(size) {}

    const T* begin() const { return first_; }
    const T* end() const { return first_ + size_; }
    std::size_t size() const { return size_; }
    bool empty() const { return size_ == 0; }
    const T& front() const { return *first_; }
    const T& operator[](std::size_t i) const { return first_[i]; }

  private:
    const T* first_ = nullptr;
    std::size_t size_ = 0;
};

using Array = Slice<Value>;

/// The keys of a table, in the order of the file.
struct Table {
    Slice<Entry> entries;

    /// The value of a key, or null.
    const Value* find(std::string_view key) const;
};

/// A date or a time: TOML has them, no file of ours does.
struct DateOrTime {
    friend bool operator==(DateOrTime, DateOrTime) = default;
};

/// One value of a TOML file and the line it begins on. Texts, lists and tables lie in the memory of their
/// document and are of no meaning without it.
struct Value {
    std::variant<std::string_view, std::int64_t, double, bool, Array, Table, DateOrTime> data;
    int line = 0;

    const std::string_view* text() const { return std::get_if<std::string_view>(&data); }
    const bool* boolean() const { return std::get_if<bool>(&data); }
    const Array* array() const { return std::get_if<Array>(&data); }
    const Table* table() const { return std::get_if<Table>(&data); }
    /// Whole and fractional numbers alike; may be infinite or not a number.
    std::optional<double> number() const;
};

struct Entry {
    std::string_view key;
    Value value;
    int line = 0; ///< of the key; of the header for `[table]`
};

/// The line to name for a key of a table: that of its value, `otherwise` where it has none.
int line_of(const Table& table, std::string_view key, int otherwise);

/// Whether two values say the same, wherever they stand; the order of keys does not matter.
bool same_content(const Value& a, const Value& b);

/// A TOML file as read: values with their lines, and the text itself for showing lines in errors. It owns the
/// memory that its values lie in, and may be moved.
class Document {
  public:
    /// `text` and everything in `root` lie in `memory`.
    Document(FileName file, std::unique_ptr<DocumentMemory> memory, std::string_view text, Table root);
    Document(Document&&) noexcept;
    Document& operator=(Document&&) noexcept;
    ~Document();

    const FileName& file() const { return file_; }
    const Table& root() const& { return root_; }
    const Table& root() && = delete; // it would outlive its document
    std::string_view text() const { return text_; }

  private:
    FileName file_;
    std::unique_ptr<DocumentMemory> memory_;
    std::string_view text_;
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
LoadResult<Document> parse_document(std::string_view text, const FileName& file,
                                    const DocumentLimits& limits = {});

} // namespace rillwatt
