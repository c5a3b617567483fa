#pragma once

#include "document_memory.hpp"
#include <memory>
#include <vector>

namespace rillwatt {

/// The tables of a plain TOML text as their headers open one after the other. What is not plain is refused: a
/// table opened twice, a key given twice, more of them than are looked through one by one.
class PlainTables {
  public:
    explicit PlainTables(DocumentMemory& memory) : memory_(memory) {}

    /// `[a.b.c]`: the keys that follow go into this new table.
    bool open(std::span<const std::string_view> path, int line);
    /// `[[name]]`: the keys that follow go into a new table at the end of this list.
    bool open_next(std::string_view name, int line);
    /// A key of the table opened last, of the root before any: to be filled in before anything else is added.
    Entry& add() { return keys_->emplace_back(); }
    /// Whether it is the only one of its name.
    bool added_is_new() const { return last_is_new(*keys_); }
    /// Everything so far.
    Table finish();

    /// Whether the last key of a table is none of those before it, and these are not too many to tell.
    static bool last_is_new(std::span<const Entry> entries);

  private:
    struct Open;

    /// A list or a table whose content is not complete yet, and the entry that stands for it.
    struct OpenList {
        std::size_t entry;
        std::vector<Value> items;
    };
    struct OpenTable {
        std::size_t entry;
        std::unique_ptr<Open> content;
    };
    struct Open {
        std::vector<Entry> entries;
        std::vector<OpenTable> tables;
    };

    static bool add_to(std::vector<Entry>& entries, const Entry& entry);
    static Open* find(const Open& table, std::string_view key);
    void close_item();
    Table closed(Open& table);

    DocumentMemory& memory_;
    Open root_;
    std::vector<OpenList> lists_;               ///< of the root
    std::vector<Entry> item_;                   ///< keys of the last table of a list
    OpenList* open_list_ = nullptr;             ///< the list that `item_` belongs to
    std::vector<Entry>* keys_ = &root_.entries; ///< of the table opened last
    std::size_t headers_ = 0;
};

} // namespace rillwatt
