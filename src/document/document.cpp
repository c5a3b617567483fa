#include "rillwatt/document/document.hpp"

#include "document_memory.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt {

const Value* Table::find(std::string_view key) const {
    const auto entry =
        std::find_if(entries.begin(), entries.end(), [&](const Entry& e) { return e.key == key; });
    return entry == entries.end() ? nullptr : &entry->value;
}

int line_of(const Table& table, std::string_view key, int otherwise) {
    const Value* value = table.find(key);
    return value == nullptr ? otherwise : value->line;
}

std::optional<double> Value::number() const {
    if (const auto* whole = std::get_if<std::int64_t>(&data)) return static_cast<double>(*whole);
    if (const auto* real = std::get_if<double>(&data)) return *real;
    return std::nullopt;
}

bool same_content(const Value& a, const Value& b) {
    if (a.data.index() != b.data.index()) return false;
    if (const Array* items = a.array()) {
        const Array& others = *b.array();
        return std::equal(items->begin(), items->end(), others.begin(), others.end(), same_content);
    }
    if (const Table* table = a.table()) {
        const Table& other = *b.table();
        return table->entries.size() == other.entries.size() &&
               std::all_of(table->entries.begin(), table->entries.end(), [&](const Entry& entry) {
                   const Value* match = other.find(entry.key);
                   return match != nullptr && same_content(entry.value, *match);
               });
    }
    if (const auto* number = std::get_if<double>(&a.data); number != nullptr && std::isnan(*number))
        return std::isnan(std::get<double>(b.data));
    if (const std::string_view* text = a.text()) return *text == *b.text();
    if (const bool* boolean = a.boolean()) return *boolean == *b.boolean();
    return a.number() == b.number();
}

Document::Document(FileName file, std::unique_ptr<DocumentMemory> memory, std::string_view text, Table root)
    : file_(std::move(file)), memory_(std::move(memory)), text_(text), root_(root) {}

Document::Document(Document&&) noexcept = default;
Document& Document::operator=(Document&&) noexcept = default;
Document::~Document() = default;

} // namespace rillwatt
