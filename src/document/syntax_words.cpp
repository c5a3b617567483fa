#include "syntax_words.hpp"

#include "rillwatt/finding/input_error.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rillwatt {

namespace {

bool has(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

/// What the library quotes at the end of a description: `saw 'x'`, `string 'name'`. Empty at a line's end.
std::string quoted_at_end(std::string_view description) {
    const std::size_t begin = description.find('\'');
    const std::size_t end = description.rfind('\'');
    if (begin == std::string_view::npos || end <= begin + 1) return "";
    const std::string text(description.substr(begin + 1, end - begin - 1));
    return text == "\\n" || text == "\\r" ? "" : printable(text);
}

bool has_control_character(std::string_view line) {
    return std::any_of(line.begin(), line.end(), [](char c) {
        const auto code = static_cast<unsigned char>(c);
        return (code < 0x20 && c != '\t' && c != '\r') || code == 0x7f;
    });
}

SyntaxWords string_words(std::string_view description, std::string_view line) {
    if (has(description, "escape sequence"))
        return {fmt::format("`{}` in a text", quoted_at_end(description)),
                "`\\\\` for a backslash, `\\\"` for a quote"};
    if (has(description, "control characters") && has_control_character(line))
        return {"a control character in a text", "printable letters"};
    return {"a text whose closing quote is missing", "a quote at both ends of the text, on one line"};
}

SyntaxWords twice_words(std::string_view description) {
    const std::string name = quoted_at_end(description);
    if (has(description, "table header"))
        return {fmt::format("`[{}]` a second time", name), "each `[table]` once"};
    return {fmt::format("`{}` a second time", name), "each key of a table once"};
}

SyntaxWords pair_words(std::string_view description) {
    const std::string saw = quoted_at_end(description);
    if (has(description, "expected value")) return {"a key without a value", "a value after `=`"};
    if (has(description, "expected '='"))
        return {"a key that no `=` follows", "`key = value`, the key one word or in quotes"};
    return {saw.empty() ? "something after the value" : fmt::format("`{}` after the value", saw),
            "the end of the line after a value, text in quotes, a comment after `#`"};
}

} // namespace

SyntaxWords syntax_words(std::string_view description, std::string_view line) {
    if (has(description, "cannot redefine")) return twice_words(description);
    if (has(description, "parsing string") || has(description, "literal string"))
        return string_words(description, line);
    if (has(description, "table header"))
        return {"a heading whose bracket is not closed", "`[table]` or `[[table]]` on one line"};
    if (has(description, "expected comma or closing ']'") || has(description, "parsing array"))
        return {"a list that is not closed, or an item without a comma before it, here or above",
                "`[item, item]`"};
    if (has(description, "inline table"))
        return {"an inline table that is not well-formed", "`{ key = value, key = value }`"};
    if (has(description, "parsing key-value pair")) return pair_words(description);
    if (has(description, "parsing value") || has(description, "parsing boolean") ||
        has(description, "integer") || has(description, "float"))
        return {"a value that is no number, not `true` or `false`, and no text in quotes",
                "text in quotes, a bare number, `true` or `false`"};
    if (has(description, "expected keys, tables"))
        return {"a line that is none of TOML's", "`key = value`, `[table]`, `[[table]]` or `# comment`"};
    return {printable(description), "TOML 1.0"};
}

} // namespace rillwatt
