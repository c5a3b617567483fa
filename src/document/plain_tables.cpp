#include "plain_tables.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

constexpr std::size_t most_keys = 512; // of one table, looked through one by one
constexpr std::size_t most_headers = 1000;

} // namespace

bool PlainTables::last_is_new(std::span<const Entry> entries) {
    if (entries.size() > most_keys) return false;
    const Entry& last = entries.back();
    for (const Entry* entry = entries.data(); entry != &last; ++entry)
        if (entry->key == last.key) return false;
    return true;
}

bool PlainTables::add_to(std::vector<Entry>& entries, const Entry& entry) {
    entries.push_back(entry);
    return last_is_new(entries);
}

PlainTables::Open* PlainTables::find(const Open& table, std::string_view key) {
    const auto found = std::find_if(table.tables.begin(), table.tables.end(), [&](const OpenTable& nested) {
        return table.entries[nested.entry].key == key;
    });
    return found == table.tables.end() ? nullptr : found->content.get();
}

bool PlainTables::open(std::span<const std::string_view> path, int line) {
    close_item();
    Open* table = &root_;
    for (std::size_t i = 0; i < path.size(); ++i) {
        if (Open* known = find(*table, path[i])) {
            if (i + 1 == path.size()) return false;
            table = known;
            continue;
        }
        if (++headers_ > most_headers || !add_to(table->entries, {path[i], {Table{}, line}, line}))
            return false;
        table->tables.push_back({table->entries.size() - 1, std::make_unique<Open>()});
        table = table->tables.back().content.get();
    }
    keys_ = &table->entries;
    return true;
}

bool PlainTables::open_next(std::string_view name, int line) {
    close_item();
    const auto known = std::find_if(lists_.begin(), lists_.end(), [&](const OpenList& list) {
        return root_.entries[list.entry].key == name;
    });
    const bool is_new = known == lists_.end();
    if (is_new && !add_to(root_.entries, {name, {Array{}, line}, line})) return false;
    if (is_new) lists_.push_back({root_.entries.size() - 1, {}});
    open_list_ = is_new ? &lists_.back() : &*known;
    open_list_->items.push_back({Table{}, line});
    keys_ = &item_;
    return true;
}

void PlainTables::close_item() {
    if (open_list_ == nullptr) return;
    open_list_->items.back().data = Table{memory_.keep(std::span<const Entry>(item_))};
    item_.clear();
    open_list_ = nullptr;
}

Table PlainTables::closed(Open& table) {
    for (OpenTable& nested : table.tables)
        table.entries[nested.entry].value.data = closed(*nested.content);
    return {memory_.keep(std::span<const Entry>(table.entries))};
}

Table PlainTables::finish() {
    close_item();
    for (const OpenList& list : lists_)
        root_.entries[list.entry].value.data = memory_.keep(std::span<const Value>(list.items));
    return closed(root_);
}

} // namespace rillwatt
