#include "rillwatt/document/content_changes.hpp"

#include "rillwatt/document/document.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace rillwatt {
namespace {

/// The line of the first key that is new or says something else; `otherwise` where keys were only taken out.
int first_changed_line(const Value& old, const Value& now, int otherwise) {
    const Table* before = old.table();
    const Table* after = now.table();
    if (before == nullptr || after == nullptr) return otherwise;
    for (const Entry& entry : after->entries) {
        const Value* value = before->find(entry.key);
        if (value == nullptr || !same_content(*value, entry.value)) return entry.value.line;
    }
    return otherwise;
}

/// What a part of a list is told by: its id, or which of those without an id it is.
std::string label_of(const Value& part, int& without_id) {
    const Table* table = part.table();
    const Value* id = table != nullptr ? table->find("id") : nullptr;
    if (id != nullptr && id->text() != nullptr) return fmt::format("\"{}\"", printable(*id->text()));
    return fmt::format("number {} without an id", ++without_id);
}

class Comparison {
  public:
    explicit Comparison(const FileName& file) : file_(file) {}

    void tables(const Table& old, const Table& now, std::span<const std::string_view> aside) {
        const auto counts = [&](const Entry& entry) {
            return std::find(aside.begin(), aside.end(), entry.key) == aside.end();
        };
        for (const Entry& entry : now.entries)
            if (counts(entry)) entries(entry, old.find(entry.key));
        for (const Entry& entry : old.entries)
            if (counts(entry) && now.find(entry.key) == nullptr) note(0, entry.key, "", "taken out");
    }

    std::vector<InputError> take() { return std::move(changes_); }

  private:
    void entries(const Entry& entry, const Value* old) {
        if (old == nullptr) return note(entry.line, entry.key, "", "added");
        if (same_content(*old, entry.value)) return;
        if (old->array() != nullptr && entry.value.array() != nullptr)
            return parts(entry, *old->array(), *entry.value.array());
        note(first_changed_line(*old, entry.value, entry.line), entry.key, "", "changed");
    }

    void parts(const Entry& entry, const Array& old, const Array& now) {
        const std::size_t before = changes_.size();
        std::map<std::string, const Value*> left;
        int without_id = 0;
        for (const Value& part : old)
            left.emplace(label_of(part, without_id), &part);
        without_id = 0;
        for (const Value& part : now) {
            const std::string label = label_of(part, without_id);
            const auto match = left.find(label);
            if (match == left.end()) {
                note(part.line, entry.key, label, "added");
                continue;
            }
            if (!same_content(*match->second, part))
                note(first_changed_line(*match->second, part, part.line), entry.key, label, "changed");
            left.erase(match);
        }
        for (const auto& [label, part] : left)
            note(0, entry.key, label, "taken out");
        if (changes_.size() == before) note(entry.line, entry.key, "", "put in another order");
    }

    void note(int line, std::string_view table, const std::string& part, std::string_view what) {
        constexpr std::size_t most = 20; // more than anybody reads
        if (changes_.size() >= most) return;
        changes_.push_back({{file_, line},
                            fmt::format("`{}`{}{} was {} after the file had been read", printable(table),
                                        part.empty() ? "" : " ", part, what),
                            "the file as it was read",
                            {}});
    }

    const FileName& file_;
    std::vector<InputError> changes_;
};

} // namespace

std::vector<InputError> content_changes(std::string_view as_read, std::string_view by_now,
                                        const FileName& file, std::span<const std::string_view> aside) {
    if (as_read == by_now) return {};
    const LoadResult<Document> old = parse_document(as_read, file);
    const LoadResult<Document> now = parse_document(by_now, file);
    if (!old) return old.errors;
    if (!now) return now.errors;
    Comparison comparison(file);
    comparison.tables(old.value->root(), now.value->root(), aside);
    std::vector<InputError> changes = comparison.take();
    add_source_lines(changes, file, by_now);
    return changes;
}

} // namespace rillwatt
