#include "wanted_content.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

/// The same table with one key set.
Table with_key(const Table& table, std::string_view key, const Value& value, DocumentMemory& memory) {
    std::vector<Entry> entries(table.entries.begin(), table.entries.end());
    const auto known =
        std::find_if(entries.begin(), entries.end(), [&](const Entry& entry) { return entry.key == key; });
    if (known == entries.end())
        entries.push_back({memory.keep(key), value, 0});
    else
        known->value = value;
    return {memory.keep(std::span<const Entry>(entries))};
}

} // namespace

WantedContent::WantedContent(const Table& root)
    : entries_(root.entries.begin(), root.entries.end()), lists_(entries_.size()) {
    for (std::size_t i = 0; i < entries_.size(); ++i) {
        const std::string name(entries_[i].key);
        if (entries_[i].value.table() != nullptr) parts_.try_emplace({name, ""}, Place{i, 0, false});
        const Array* items = entries_[i].value.array();
        if (items == nullptr) continue;
        lists_[i].assign(items->begin(), items->end());
        for (std::size_t k = 0; k < items->size(); ++k) {
            const Table* table = (*items)[k].table();
            const Value* id = table != nullptr ? table->find("id") : nullptr;
            if (id != nullptr && id->text() != nullptr)
                parts_.try_emplace({name, std::string(*id->text())}, Place{i, k, true});
        }
    }
}

Value& WantedContent::at(Place place) {
    return place.in_list ? lists_[place.entry][place.item] : entries_[place.entry].value;
}

bool WantedContent::set(const KeyChange& change, Document value) {
    const auto part = parts_.find({change.table, change.id});
    if (part == parts_.end()) return false;
    Value& table = at(part->second);
    table.data = with_key(*table.table(), change.key, value.root().entries.front().value, memory_);
    values_.push_back(std::move(value));
    return true;
}

bool WantedContent::append(const Table& more) {
    for (const Entry& entry : more.entries) {
        const auto known = std::find_if(entries_.begin(), entries_.end(),
                                        [&](const Entry& other) { return other.key == entry.key; });
        const Array* items = entry.value.array();
        if (known == entries_.end()) {
            entries_.push_back(entry);
            lists_.emplace_back();
            if (items != nullptr) lists_.back().assign(items->begin(), items->end());
        } else if (items != nullptr && known->value.array() != nullptr) {
            std::vector<Value>& list = lists_[static_cast<std::size_t>(known - entries_.begin())];
            list.insert(list.end(), items->begin(), items->end());
        } else {
            return false;
        }
    }
    return true;
}

int WantedContent::line_of(const std::string& table, const std::string& id) const {
    const auto part = parts_.find({table, id});
    if (part == parts_.end()) return 1;
    const Place place = part->second;
    const Value& value = place.in_list ? lists_[place.entry][place.item] : entries_[place.entry].value;
    return value.table()->entries.empty() ? 1 : value.table()->entries.front().line;
}

Table WantedContent::root() {
    for (std::size_t i = 0; i < entries_.size(); ++i)
        if (entries_[i].value.array() != nullptr)
            entries_[i].value.data = Array(lists_[i].data(), lists_[i].size());
    return {Slice<Entry>(entries_.data(), entries_.size())};
}

} // namespace rillwatt
