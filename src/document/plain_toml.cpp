#include "plain_toml.hpp"

#include "plain_tables.hpp"
#include "toml_lexer.hpp"
#include <array>
#include <charconv>
#include <cstring>
#include <utility>

namespace rillwatt {
namespace {

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Which bytes a bare key is made of.
constexpr std::array<bool, 256> bare_bytes = [] {
    std::array<bool, 256> bare{};
    for (unsigned c = 0; c < 128; ++c)
        bare[c] = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
                  c == '-';
    return bare;
}();

constexpr bool is_bare(char c) { return bare_bytes[static_cast<unsigned char>(c)]; }

/// Which bytes a string on one line may end at, or has to be looked at.
constexpr std::array<bool, 256> string_stops = [] {
    std::array<bool, 256> stops{};
    for (const char c : {'"', '\'', '\\', '\n', '\0'})
        stops[static_cast<unsigned char>(c)] = true;
    return stops;
}();

constexpr bool may_stop_string(char c) { return string_stops[static_cast<unsigned char>(c)]; }

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

/// Bytes at the front of `text` that are printable ASCII and line ends, eight of them at once.
std::size_t plain_front(std::string_view text) {
    constexpr std::uint64_t each = 0x0101010101010101;
    constexpr std::uint64_t top = 0x80 * each;
    // Of each byte the top bit: no byte carries into the next, for the top bits are left out before anything
    // is added.
    const auto is_zero = [](std::uint64_t bytes) { return ~(((bytes & ~top) + 0x7F * each) | bytes) & top; };
    const auto is_control = [](std::uint64_t bytes) {
        return ~(((bytes & ~top) + 0x60 * each) | bytes) & top;
    };
    const auto is_del = [](std::uint64_t bytes) { return ((bytes & ~top) + each) & top; };
    std::size_t at = 0;
    std::uint64_t bytes = 0;
    for (; at + sizeof bytes <= text.size(); at += sizeof bytes) {
        std::memcpy(&bytes, text.data() + at, sizeof bytes);
        const std::uint64_t control = is_control(bytes) & ~is_zero(bytes ^ ('\n' * each));
        if (((bytes & top) | is_del(bytes) | control) != 0) break;
    }
    return at;
}

/// Whether the text is made of characters that TOML allows and that need no further thought.
bool has_plain_characters(std::string_view text) {
    std::size_t looked = 0; // up to where one by one
    for (std::size_t i = 0; i < text.size();) {
        if (i >= looked) {
            i += plain_front(text.substr(i));
            looked = i + sizeof(std::uint64_t);
            if (i == text.size()) return true;
        }
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

/// Reads a text that ends in a zero byte and has no other.
class PlainReader {
  public:
    PlainReader(std::string_view text, DocumentMemory& memory)
        : text_(text), at_(text.data()), memory_(memory), tables_(memory) {}

    std::optional<Table> run() {
        while (skip_space(), !at_end()) {
            if (!(next() == '[' ? header() : key_and_value())) return std::nullopt;
            if (!line_is_over()) return std::nullopt;
        }
        return tables_.finish();
    }

  private:
    bool at_end() const { return *at_ == '\0'; }
    char next() const { return *at_; }
    bool take(char c) {
        if (*at_ != c) return false;
        ++at_;
        return true;
    }
    std::string_view since(const char* begin) const { return {begin, static_cast<std::size_t>(at_ - begin)}; }
    void skip_blanks() {
        while (*at_ == ' ' || *at_ == '\t')
            ++at_;
    }
    void skip_comment() {
        at_ = text_.data() + toml_lexer::after_comment(text_, static_cast<std::size_t>(at_ - text_.data()));
    }
    /// Blanks, line ends and comments; keeps count of the lines.
    void skip_space() {
        for (;; ++at_) {
            if (*at_ == '#') skip_comment();
            if (*at_ == '\n')
                ++line_;
            else if (*at_ != ' ' && *at_ != '\t' && *at_ != '\r')
                return;
        }
    }
    bool line_is_over() {
        if (*at_ == '\n') return true; // as it mostly is
        skip_blanks();
        return *at_ == '\n' || *at_ == '\r' || *at_ == '#' || at_end();
    }

    /// A string in single quotes of either kind, within one line. Of escapes only those of quotes (for inch
    /// marks) and of backslashes are read.
    std::optional<std::string_view> quoted() {
        const char quote = *at_;
        const char* const begin = at_ + 1;
        const char other_quote = quote == '"' ? '\'' : '"';
        const char* end = begin;
        while (!may_stop_string(*end) || *end == other_quote)
            ++end;
        at_ = end;
        const std::string_view content = since(begin);
        if (*at_ == '\\') return escaped(quote, content);
        if (!take(quote)) return std::nullopt;
        if (content.empty() && next() == quote) return std::nullopt; // three quotes
        return content;
    }

    /// The same from the first backslash on.
    std::optional<std::string_view> escaped(char quote, std::string_view before) {
        std::string content(before);
        for (; *at_ != quote && *at_ != '\n' && !at_end(); ++at_) {
            if (*at_ == '\\' && quote == '"') {
                ++at_;
                if (*at_ != '"' && *at_ != '\\') return std::nullopt;
            }
            content += *at_;
        }
        if (!take(quote)) return std::nullopt;
        return memory_.keep(content);
    }

    std::optional<std::string_view> key() {
        if (*at_ == '"' || *at_ == '\'') return quoted();
        const char* end = at_;
        while (is_bare(*end))
            ++end;
        if (end == at_) return std::nullopt;
        const char* const begin = std::exchange(at_, end);
        return since(begin);
    }

    /// `[a.b.c]` or `[[name]]`; false when it is not plain.
    bool header() {
        ++at_;
        const bool repeated = take('[');
        std::array<std::string_view, plain_toml_nesting> path;
        std::size_t parts = 0;
        do {
            const std::optional<std::string_view> part = key();
            if (!part) return false;
            path[parts++] = *part;
        } while (parts < path.size() && take('.'));
        if (!take(']') || (repeated && !take(']'))) return false;
        if (!repeated) return tables_.open(std::span(path).first(parts), line_);
        return parts == 1 && tables_.open_next(path.front(), line_);
    }

    /// `key = value`, into `entry`.
    bool pair(Entry& entry) {
        entry.line = line_;
        const std::optional<std::string_view> name = key();
        if (!name) return false;
        entry.key = *name;
        skip_blanks();
        if (!take('=')) return false;
        skip_blanks();
        return value(entry.value);
    }

    bool key_and_value() { return pair(tables_.add()) && tables_.added_is_new(); }

    bool value(Value& slot) {
        slot.line = line_;
        const char c = *at_;
        if (c == '"' || c == '\'') {
            const std::optional<std::string_view> text = quoted();
            if (text) slot.data.emplace<std::string_view>(*text);
            return text.has_value();
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
        const bool is_true = *at_ == 't';
        for (const char c : std::string_view(is_true ? "true" : "false"))
            if (!take(c)) return false;
        slot.data = is_true;
        return true;
    }

    bool number(Value& slot) {
        const char* const begin = at_;
        const bool negative = take('-');
        const char* const digits = at_;
        std::int64_t whole = 0;
        for (; is_digit(*at_) && at_ - digits <= 15; ++at_)
            whole = 10 * whole + (*at_ - '0');
        const auto whole_digits = at_ - digits;
        if (whole_digits == 0 || whole_digits > 15 || (whole_digits > 1 && *digits == '0')) return false;
        slot.data = negative ? -whole : whole;
        if (*at_ == '.' && !fraction(begin, slot)) return false;
        return !is_bare(*at_) && *at_ != ':' && *at_ != '+' && *at_ != '.';
    }

    bool fraction(const char* begin, Value& slot) {
        ++at_;
        if (!is_digit(*at_)) return false;
        while (is_digit(*at_))
            ++at_;
        double real = 0;
        const std::from_chars_result result = std::from_chars(begin, at_, real);
        slot.data = real;
        return result.ec == std::errc() && result.ptr == at_;
    }

    bool list(Value& slot) {
        ++at_;
        const std::size_t first = items_.size(); // those of the lists around it come before
        while (skip_space(), !take(']')) {
            Value item;
            if (at_end() || !value(item)) return false;
            items_.push_back(item);
            skip_space();
            if (!take(',') && next() != ']') return false;
        }
        slot.data = memory_.keep(std::span<const Value>(items_).subspan(first));
        items_.resize(first);
        return true;
    }

    bool inline_table(Value& slot) {
        ++at_;
        const std::size_t first = entries_.size(); // those of the tables around it come before
        skip_blanks();
        while (!take('}')) {
            Entry entry;
            if (!pair(entry)) return false;
            entries_.push_back(entry);
            if (!PlainTables::last_is_new(std::span(entries_).subspan(first))) return false;
            skip_blanks();
            if (next() == '}') continue;
            if (!take(',')) return false;
            skip_blanks();
            if (next() == '}') return false; // no comma may close an inline table
        }
        slot.data = Table{memory_.keep(std::span<const Entry>(entries_).subspan(first))};
        entries_.resize(first);
        return true;
    }

    std::string_view text_;
    const char* at_;
    int line_ = 1;
    std::size_t depth_ = 0; ///< lists and inline tables around the value being read
    DocumentMemory& memory_;
    PlainTables tables_;
    std::vector<Value> items_;   ///< of lists that are still open
    std::vector<Entry> entries_; ///< of inline tables that are still open
};

} // namespace

std::optional<Table> read_plain_toml(std::string_view text, DocumentMemory& memory) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    if (!has_plain_characters(text)) return std::nullopt;
    return PlainReader(text, memory).run();
}

} // namespace rillwatt
