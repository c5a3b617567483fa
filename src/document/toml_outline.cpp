#include "toml_outline.hpp"

#include "rillwatt/document/document.hpp"

#include "toml_lexer.hpp"
#include <algorithm>

namespace rillwatt {
namespace {

using namespace std::string_view_literals;

class Outliner {
  public:
    explicit Outliner(std::string_view text) : text_(text) {}

    std::vector<TableSpan> run() {
        if (text_.starts_with("\xEF\xBB\xBF"sv)) at_ = 3;
        tables_.emplace_back(); // what stands above the first header
        while (skip_space(), at_ < text_.size()) {
            const std::size_t before = at_;
            if (text_[at_] == '[')
                header();
            else
                key_and_value();
            if (at_ == before) break; // not TOML: nothing more to outline
        }
        return std::move(tables_);
    }

  private:
    void skip_space() { at_ = toml_lexer::after_space(text_, at_); }
    void skip_blanks() { at_ = toml_lexer::after_blanks(text_, at_); }
    bool next_is(char c) const { return at_ < text_.size() && text_[at_] == c; }
    bool take(char c) {
        if (!next_is(c)) return false;
        ++at_;
        return true;
    }

    std::size_t line_begin(std::size_t at) const {
        const std::size_t end = at == 0 ? std::string_view::npos : text_.rfind('\n', at - 1);
        return end == std::string_view::npos ? 0 : end + 1;
    }

    std::string key_part() {
        const std::size_t begin = at_;
        if (next_is('"') || next_is('\'')) {
            at_ = toml_lexer::after_string(text_, at_);
            const std::string line = "key = " + std::string(text_.substr(begin, at_ - begin));
            const LoadResult<Document> read = parse_document(line, "");
            const Value* value = read ? read.value->root().find("key") : nullptr;
            return std::string(value != nullptr && value->text() != nullptr ? *value->text() : "");
        }
        at_ = std::min(text_.find_first_of(" \t.=]\r\n,{}[#\"'", at_), text_.size());
        return std::string(text_.substr(begin, at_ - begin));
    }

    /// The first part of a key, and whether more follow.
    KeySpan key_path() {
        KeySpan span;
        skip_blanks();
        span.key = key_part();
        skip_blanks();
        while (take('.')) {
            span.dotted = true;
            skip_blanks();
            key_part();
            skip_blanks();
        }
        return span;
    }

    void header() {
        TableSpan table;
        table.line_begin = line_begin(at_);
        take('[');
        table.repeated = take('[');
        const KeySpan name = key_path();
        if (!name.dotted) table.name = name.key;
        take(']');
        if (table.repeated) take(']');
        table.open = at_;
        tables_.push_back(std::move(table));
    }

    /// Reads `key = value`; the value's range is exact, without blanks or comment around it.
    KeySpan assignment() {
        KeySpan span = key_path();
        take('=');
        skip_blanks();
        span.value.begin = at_;
        skip_value();
        span.value.end = at_;
        return span;
    }

    void key_and_value() {
        const std::size_t begin = line_begin(at_);
        const std::size_t table = tables_.size() - 1; // inline tables are added behind it
        const bool top_level = table == top_level_index_;
        KeySpan span = key_path();
        take('=');
        skip_blanks();
        span.value.begin = at_;
        if (top_level && !span.dotted && next_is('['))
            inline_tables(span.key);
        else
            skip_value();
        span.value.end = at_;
        TableSpan& owner = tables_[top_level ? 0 : table];
        owner.keys.push_back(std::move(span));
        owner.line_begin = begin;
        if (top_level) top_level_index_ = tables_.size() - 1;
    }

    void skip_scalar() {
        const std::size_t begin = at_;
        at_ = std::min(text_.find_first_of(",]}#\r\n", at_), text_.size());
        while (at_ > begin && (text_[at_ - 1] == ' ' || text_[at_ - 1] == '\t'))
            --at_;
    }

    void skip_value() {
        if (next_is('"') || next_is('\''))
            at_ = toml_lexer::after_string(text_, at_);
        else if (next_is('['))
            skip_list();
        else if (next_is('{'))
            inline_table();
        else
            skip_scalar();
    }

    void skip_list() {
        take('[');
        while (skip_space(), at_ < text_.size() && !take(']')) {
            const std::size_t before = at_;
            skip_value();
            skip_space();
            take(',');
            if (at_ == before) return;
        }
    }

    /// `{ key = value, ... }`
    TableSpan inline_table() {
        TableSpan table;
        table.is_inline = true;
        take('{');
        table.open = at_;
        while (skip_space(), at_ < text_.size() && !take('}')) {
            const std::size_t before = at_;
            table.keys.push_back(assignment());
            skip_space();
            take(',');
            if (at_ == before) break;
        }
        return table;
    }

    /// `name = [ { ... }, { ... } ]`: each of them is a table like one below `[[name]]`.
    void inline_tables(const std::string& name) {
        take('[');
        while (skip_space(), at_ < text_.size() && !take(']')) {
            const std::size_t before = at_;
            if (next_is('{')) {
                TableSpan table = inline_table();
                table.name = name;
                table.repeated = true;
                tables_.push_back(std::move(table));
            } else {
                skip_value();
            }
            skip_space();
            take(',');
            if (at_ == before) return;
        }
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::vector<TableSpan> tables_;
    std::size_t top_level_index_ = 0; ///< last table while no header has been met
};

} // namespace

std::vector<TableSpan> outlined_tables(std::string_view text) { return Outliner(text).run(); }

} // namespace rillwatt
