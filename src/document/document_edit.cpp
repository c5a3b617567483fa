#include "rillwatt/document/document_edit.hpp"

#include "rillwatt/document/document.hpp"

#include <fmt/format.h>

#include "toml_outline.hpp"
#include "wanted_content.hpp"
#include <algorithm>
#include <unordered_map>

namespace rillwatt {
namespace {

/// Bytes to put in the place of a range of the original, which may be empty.
struct Replacement {
    TextRange range;
    std::string text;
};

std::string_view line_end_of(std::string_view text) {
    const std::size_t end = text.find('\n');
    return end != std::string_view::npos && end > 0 && text[end - 1] == '\r' ? "\r\n" : "\n";
}

/// A document whose one key is a value written as TOML; empty when it is none.
std::optional<Document> parsed_value(const std::string& toml) {
    if (toml.find('\n') != std::string::npos) return std::nullopt;
    LoadResult<Document> read = parse_document("value = " + toml, "");
    if (!read || read.value->root().entries.size() != 1) return std::nullopt;
    return std::move(read.value);
}

const Value& value_of(const Document& document) { return document.root().entries.front().value; }

/// The id of a part as it is written; empty when it has none that could be read.
std::string id_of(const TableSpan& table, std::string_view text) {
    const auto key =
        std::find_if(table.keys.begin(), table.keys.end(), [](const KeySpan& k) { return k.key == "id"; });
    if (key == table.keys.end() || key->dotted) return {};
    const std::optional<Document> value =
        parsed_value(std::string(text.substr(key->value.begin, key->value.end - key->value.begin)));
    return value && value_of(*value).text() != nullptr ? std::string(*value_of(*value).text())
                                                       : std::string();
}

/// What parts are looked up by: the table's name and the id, empty for a single table.
std::string part_key(std::string_view table, std::string_view id) { return fmt::format("{}\n{}", table, id); }

std::string key_text(const std::string& key) {
    constexpr std::string_view bare = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-";
    return !key.empty() && key.find_first_not_of(bare) == std::string::npos ? key : toml_string(key);
}

/// Sets keys of the parts that an outline finds.
class Editor {
  public:
    explicit Editor(std::string_view text) : text_(text), tables_(outlined_tables(text)) {
        for (const TableSpan& table : tables_)
            if (!table.name.empty())
                parts_.try_emplace(part_key(table.name, table.repeated ? id_of(table, text) : ""), &table);
    }

    /// False when the part is not written in a way that can be edited.
    bool set(const KeyChange& change) {
        const TableSpan* table = find(change);
        if (table == nullptr) return false;
        for (const KeySpan& key : table->keys)
            if (key.key == change.key) {
                if (key.dotted) return false;
                replacements_.push_back({key.value, change.value});
                return true;
            }
        replacements_.push_back(table->is_inline ? inside_inline(*table, change)
                                                 : on_own_line(*table, change));
        return true;
    }

    std::string result() {
        std::stable_sort(
            replacements_.begin(), replacements_.end(),
            [](const Replacement& a, const Replacement& b) { return a.range.begin < b.range.begin; });
        std::string edited;
        std::size_t at = 0;
        for (const Replacement& replacement : replacements_) {
            if (replacement.range.begin < at)
                continue; // asked for twice: the comparison afterwards will tell
            edited += text_.substr(at, replacement.range.begin - at);
            edited += replacement.text;
            at = replacement.range.end;
        }
        edited += text_.substr(at);
        return edited;
    }

  private:
    const TableSpan* find(const KeyChange& change) const {
        const auto part = parts_.find(part_key(change.table, change.id));
        if (part == parts_.end() || part->second->repeated == change.id.empty()) return nullptr;
        return part->second;
    }

    static Replacement inside_inline(const TableSpan& table, const KeyChange& change) {
        const std::string pair = fmt::format("{} = {}", key_text(change.key), change.value);
        if (table.keys.empty()) return {{table.open, table.open}, " " + pair + " "};
        const std::size_t end = table.keys.back().value.end;
        return {{end, end}, ", " + pair};
    }

    Replacement on_own_line(const TableSpan& table, const KeyChange& change) const {
        const std::size_t last = table.keys.empty() ? table.open : table.keys.back().value.end;
        const std::size_t indent_end =
            std::min(text_.find_first_not_of(" \t", table.line_begin), text_.size());
        const std::string line =
            fmt::format("{}{} = {}", text_.substr(table.line_begin, indent_end - table.line_begin),
                        key_text(change.key), change.value);
        const std::string_view line_end = line_end_of(text_);
        const std::size_t end = text_.find('\n', last);
        if (end == std::string_view::npos)
            return {{text_.size(), text_.size()}, fmt::format("{}{}", line_end, line)};
        return {{end + 1, end + 1}, fmt::format("{}{}", line, line_end)};
    }

    std::string_view text_;
    std::vector<TableSpan> tables_;
    std::unordered_map<std::string, const TableSpan*> parts_;
    std::vector<Replacement> replacements_;
};

/// New text behind what is there, a blank line between, in the file's own line ends.
std::string with_appended(std::string text, std::string_view line_end, std::string_view appended) {
    if (appended.empty()) return text;
    if (!text.empty()) {
        if (!text.ends_with('\n')) text += line_end;
        text += line_end;
    }
    for (const char c : appended) {
        if (c == '\r') continue;
        if (c == '\n')
            text += line_end;
        else
            text += c;
    }
    return text;
}

/// The original's content with the changes made in memory: what the edited file must say.
bool apply(WantedContent& wanted, const std::vector<KeyChange>& changes, const Table& appended) {
    for (const KeyChange& change : changes) {
        std::optional<Document> value = parsed_value(change.value);
        if (!value || !wanted.set(change, std::move(*value))) return false;
    }
    return wanted.append(appended);
}

std::string shown_part(const KeyChange& change) {
    return printable(change.id.empty() ? change.table : change.id);
}

InputError refused(const FileName& file, int line, std::string found) {
    return {{file, line},
            std::move(found),
            "a file written so that it can be edited without touching the rest",
            {}};
}

/// One error for each change whose part is not written in a way that can be edited.
std::vector<InputError> set_all(Editor& editor, const std::vector<KeyChange>& changes,
                                const Document& original) {
    std::vector<InputError> errors;
    const WantedContent content(original.root());
    for (const KeyChange& change : changes) {
        if (editor.set(change)) continue;
        errors.push_back(
            refused(original.file(), content.line_of(change.table, change.id),
                    fmt::format("`{}` of {} cannot be set where it stands", change.key, shown_part(change))));
    }
    return errors;
}

} // namespace

LoadResult<std::string> edited_document(std::string_view text, const FileName& file,
                                        const std::vector<KeyChange>& changes, std::string_view appended) {
    LoadResult<Document> original = parse_document(text, file);
    if (!original) return {{}, std::move(original.errors)};
    LoadResult<Document> addition = parse_document(appended, file);
    if (!addition) return {{}, {refused(file, 1, "text to append that is not TOML")}};

    Editor editor(text);
    std::vector<InputError> errors = set_all(editor, changes, *original.value);
    add_source_lines(errors, file, text);
    if (!errors.empty()) return {{}, std::move(errors)};

    std::string edited = with_appended(editor.result(), line_end_of(text), appended);
    WantedContent wanted(original.value->root());
    const bool possible = apply(wanted, changes, addition.value->root());
    const LoadResult<Document> result = parse_document(edited, file);
    if (!possible || !result || !same_content(Value{wanted.root(), 0}, Value{result.value->root(), 0}))
        return {{}, {refused(file, 1, "changes that cannot be written into this file as it stands")}};
    return {std::move(edited), {}};
}

std::string toml_string(std::string_view text) {
    std::string quoted = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\')
            quoted += {'\\', c};
        else if (byte < 0x20 || byte == 0x7F)
            quoted += fmt::format("\\u{:04x}", static_cast<unsigned>(byte));
        else
            quoted += c;
    }
    return quoted + '"';
}

std::string toml_number(double number) {
    const std::string text = fmt::format("{}", number);
    return text.ends_with(".0") ? text.substr(0, text.size() - 2) : text;
}

} // namespace rillwatt
