#include "rillwatt/document/value_lines.hpp"

#include "rillwatt/document/document.hpp"

#include <algorithm>

namespace rillwatt {
namespace {

/// The line of `key` in a table that begins on `line`, looked for in a value and all within it; 0 when there
/// is none. Values come in the order of the file as far as they lie in each other.
int line_of_key(const Value& value, int begin, int line, std::string_view key) {
    if (const Array* items = value.array()) {
        for (const Value& item : *items)
            if (const int found = line_of_key(item, item.line, line, key)) return found;
        return 0;
    }
    const Table* table = value.table();
    if (table == nullptr) return 0;
    if (begin == line)
        if (const Value* found = table->find(key)) return found->line;
    for (const Entry& entry : table->entries)
        if (const int found = line_of_key(entry.value, entry.line, line, key)) return found;
    return 0;
}

bool meant(const InputError& error, std::string_view file) {
    return !error.key.empty() && error.location.line > 0 && error.location.file.view() == file;
}

} // namespace

void locate_values(std::vector<InputError>& errors, std::string_view file, std::string_view text) {
    const auto is_meant = [file](const InputError& error) { return meant(error, file); };
    if (std::any_of(errors.begin(), errors.end(), is_meant)) {
        const LoadResult<Document> document = parse_document(text, FileName(file));
        for (InputError& error : errors) {
            if (!document || !meant(error, file)) continue;
            const Value root{document.value->root(), 0};
            if (const int line = line_of_key(root, 0, error.location.line, error.key)) {
                error.location.line = line;
                error.key = {};
            }
        }
    }
    add_source_lines(errors, file, text);
}

} // namespace rillwatt
