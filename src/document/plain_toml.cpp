#include "plain_toml.hpp"

#include "toml_lexer.hpp"
#include <algorithm>
#include <charconv>

namespace rillwatt {
namespace {

constexpr bool is_bare(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
}

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Bytes of the well-formed UTF-8 character of two or three bytes that begins `text`; 0 when there is none.
/// Longer ones are left to the library.
std::size_t short_character(std::string_view text) {
    const auto byte = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u;
    };
    const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0u) == 0x80u; };
    if (byte(0) >= 0xC2 && byte(0) <= 0xDF) return follows(1) ? 2 : 0;
    if (byte(0) < 0xE0 || byte(0) > 0xEE || !follows(1) || !follows(2)) return 0;
    const bool overlong = byte(0) == 0xE0 && byte(1) < 0xA0;
    const bool surrogate = byte(0) == 0xED && byte(1) > 0x9F;
    return overlong || surrogate ? 0 : 3;
}

/// Whether the text is made of characters that TOML allows and that need no further thought.
bool has_plain_characters(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        const auto c = static_cast<unsigned char>(text[i]);
        if ((c >= 0x20 && c < 0x7F) || c == '\n') {
            ++i;
            continue;
        }
        if (c >= 0x80) {
            const std::size_t bytes = short_character(text.substr(i));
            if (bytes == 0) return false;
            i += bytes;
            continue;
        }
        const bool line_end = c == '\r' && i + 1 < text.size() && text[i + 1] == '\n';
        if (c != '\t' && !line_end) return false;
        ++i;
    }
    return true;
}

class PlainReader {
  public:
    explicit PlainReader(std::string_view text) : text_(text) {}

    std::optional<Table> run() {
        Table* table = &root_;
        while (skip_space(), !at_end()) {
            if (next() == '[') {
                table = header();
                if (table == nullptr) return std::nullopt;
            } else if (!key_and_value(*table)) {
                return std::nullopt;
            }
            if (!line_is_over()) return std::nullopt;
        }
        return std::move(root_);
    }

  private:
    bool at_end() const { return at_ >= text_.size(); }
    char next() const { return at_end() ? '\0' : text_[at_]; }
    bool take(char c) {
        if (next() != c) return false;
        ++at_;
        return true;
    }
    void skip_blanks() {
        while (!at_end() && (text_[at_] == ' ' || text_[at_] == '\t'))
            ++at_;
    }
    /// Blanks, line ends and comments; keeps count of the lines.
    void skip_space() {
        for (; !at_end(); ++at_) {
            const char c = text_[at_];
            if (c == '#') at_ = toml_lexer::after_comment(text_, at_);
            if (at_end()) return;
            if (text_[at_] == '\n')
                ++line_;
            else if (c != ' ' && c != '\t' && c != '\r')
                return;
        }
    }
    bool line_is_over() {
        skip_blanks();
        return at_end() || next() == '\n' || next() == '\r' || next() == '#';
    }

    /// A string in single quotes of either kind, within one line. Of escapes only those of quotes (for inch
    /// marks) and of backslashes are read.
    std::optional<std::string> quoted() {
        const char quote = next();
        const std::size_t begin = ++at_;
        while (!at_end() && text_[at_] != quote && text_[at_] != '\n' && text_[at_] != '\\')
            ++at_;
        std::string content(text_.substr(begin, at_ - begin));
        for (; !at_end() && text_[at_] != quote && text_[at_] != '\n'; ++at_) {
            if (text_[at_] == '\\' && quote == '"') {
                ++at_;
                if (next() != '"' && next() != '\\') return std::nullopt;
            }
            content += text_[at_];
        }
        if (!take(quote)) return std::nullopt;
        if (content.empty() && next() == quote) return std::nullopt; // three quotes
        return content;
    }

    std::optional<std::string> key() {
        if (next() == '"' || next() == '\'') return quoted();
        const std::size_t begin = at_;
        while (!at_end() && is_bare(text_[at_]))
            ++at_;
        if (at_ == begin) return std::nullopt;
        return std::string(text_.substr(begin, at_ - begin));
    }

    /// A new entry; null when the key is there already, or the table is too large to look.
    Value* added(Table& table, std::string key) {
        constexpr std::size_t largest = 512;
        if (table.entries.size() >= largest || table.find(key) != nullptr) return nullptr;
        if (table.entries.empty()) table.entries.reserve(4);
        return &table.entries.emplace_back(Entry{std::move(key), line_, Value{false, line_}}).value;
    }

    /// The table that the keys after this header go into; null when the header is not plain.
    Table* header() {
        ++at_;
        const bool repeated = take('[');
        std::vector<std::string> path;
        do {
            std::optional<std::string> part = key();
            if (!part) return nullptr;
            path.push_back(std::move(*part));
        } while (path.size() < plain_toml_nesting && take('.'));
        if (!take(']') || (repeated && !take(']'))) return nullptr;
        if (!repeated) return opened(path);
        return path.size() == 1 ? next_of(path.front()) : nullptr;
    }

    /// The new table `[a.b.c]`. The tables on the way to it are made, or were made by such headers.
    Table* opened(const std::vector<std::string>& path) {
        constexpr std::size_t most_headers = 1000; // looked through one by one
        Table* table = &root_;
        std::string way;
        for (std::size_t i = 0; i < path.size(); ++i) {
            way += path[i] + '\n';
            const bool is_new = std::find(opened_.begin(), opened_.end(), way) == opened_.end();
            if (!is_new && i + 1 == path.size()) return nullptr;
            Value* value = is_new ? added(*table, path[i]) : &entry_of(*table, path[i])->value;
            if (value == nullptr || opened_.size() > most_headers) return nullptr;
            if (is_new) {
                value->data = Table{};
                opened_.push_back(way);
            }
            table = std::get_if<Table>(&value->data);
        }
        return table;
    }

    /// A new table at the end of `[[name]]`.
    Table* next_of(const std::string& name) {
        Value* list = nullptr;
        if (std::find(repeated_.begin(), repeated_.end(), name) == repeated_.end()) {
            list = added(root_, name);
            if (list == nullptr) return nullptr;
            list->data = Array{};
            repeated_.push_back(name);
        } else {
            list = &entry_of(root_, name)->value;
        }
        Array& tables = std::get<Array>(list->data);
        tables.push_back({Table{}, line_});
        return std::get_if<Table>(&tables.back().data);
    }

    static Entry* entry_of(Table& table, const std::string& name) {
        const auto entry = std::find_if(table.entries.begin(), table.entries.end(),
                                        [&](const Entry& e) { return e.key == name; });
        return entry == table.entries.end() ? nullptr : &*entry;
    }

    bool key_and_value(Table& table) {
        std::optional<std::string> name = key();
        if (!name) return false;
        skip_blanks();
        if (!take('=')) return false;
        skip_blanks();
        Value* slot = added(table, std::move(*name));
        return slot != nullptr && value(*slot);
    }

    bool value(Value& slot) {
        slot.line = line_;
        const char c = next();
        if (c == '"' || c == '\'') {
            std::optional<std::string> text = quoted();
            if (!text) return false;
            slot.data = std::move(*text);
            return true;
        }
        if (c == '[' || c == '{') {
            if (depth_ >= plain_toml_nesting) return false;
            ++depth_;
            const bool is_read = c == '[' ? list(slot) : inline_table(slot);
            --depth_;
            return is_read;
        }
        if (c == 't' || c == 'f') return boolean(slot);
        return number(slot);
    }

    bool boolean(Value& slot) {
        const std::string_view word = next() == 't' ? "true" : "false";
        if (text_.substr(at_, word.size()) != word) return false;
        at_ += word.size();
        slot.data = word == "true";
        return true;
    }

    bool number(Value& slot) {
        const std::size_t begin = at_;
        take('-');
        const std::size_t digits = at_;
        while (is_digit(next()))
            ++at_;
        const std::size_t whole_digits = at_ - digits;
        if (whole_digits == 0 || whole_digits > 15 || (whole_digits > 1 && text_[digits] == '0'))
            return false;
        bool real = false;
        if (next() == '.') {
            real = true;
            ++at_;
            if (!is_digit(next())) return false;
            while (is_digit(next()))
                ++at_;
        }
        if (next() == '_' || next() == '-' || next() == ':' || next() == '+' || next() == '.' ||
            is_bare(next()))
            return false;
        return real ? converted<double>(begin, slot) : converted<std::int64_t>(begin, slot);
    }

    template<class Number>
    bool converted(std::size_t begin, Value& slot) {
        Number number{};
        const char* end = text_.data() + at_;
        const std::from_chars_result result = std::from_chars(text_.data() + begin, end, number);
        slot.data = number;
        return result.ec == std::errc() && result.ptr == end;
    }

    bool list(Value& slot) {
        ++at_;
        Array items;
        while (skip_space(), !take(']')) {
            items.push_back({false, line_});
            if (at_end() || !value(items.back())) return false;
            skip_space();
            if (!take(',') && next() != ']') return false;
        }
        slot.data = std::move(items);
        return true;
    }

    bool inline_table(Value& slot) {
        ++at_;
        Table table;
        skip_blanks();
        while (!take('}')) {
            if (!key_and_value(table)) return false;
            skip_blanks();
            if (next() == '}') continue;
            if (!take(',')) return false;
            skip_blanks();
            if (next() == '}') return false; // no comma may close an inline table
        }
        slot.data = std::move(table);
        return true;
    }

    std::string_view text_;
    std::size_t at_ = 0;
    int line_ = 1;
    std::size_t depth_ = 0; ///< lists and inline tables around the value being read
    Table root_;
    std::vector<std::string> repeated_; ///< names of `[[name]]` so far
    std::vector<std::string> opened_;   ///< tables that `[a.b]` headers made, each part and a line end
};

} // namespace

std::optional<Table> read_plain_toml(std::string_view text) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    if (!has_plain_characters(text)) return std::nullopt;
    return PlainReader(text).run();
}

} // namespace rillwatt
