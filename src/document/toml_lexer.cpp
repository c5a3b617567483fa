#include "toml_lexer.hpp"

#include <algorithm>

namespace rillwatt::toml_lexer {
namespace {

/// The end of a string in single or threefold quotes that opened at `at`. Up to two quotes may stand just
/// before the closing three.
std::size_t after_quotes(std::string_view text, std::size_t at, char quote) {
    const bool threefold = text.substr(at, 3) == std::string_view("\"\"\"") || text.substr(at, 3) == "'''";
    const std::size_t width = threefold ? 3 : 1;
    std::size_t i = at + width;
    while (i < text.size()) {
        if (text[i] == '\\' && quote == '"') {
            i += 2;
        } else if (!threefold && text[i] == '\n') {
            return i;
        } else if (text[i] == quote && (!threefold || text.substr(i, 3) == text.substr(at, 3))) {
            i += width;
            for (int more = 0; threefold && more < 2 && i < text.size() && text[i] == quote; ++more)
                ++i;
            return std::min(i, text.size());
        } else {
            ++i;
        }
    }
    return text.size();
}

} // namespace

std::size_t after_string(std::string_view text, std::size_t at) { return after_quotes(text, at, text[at]); }

std::size_t after_comment(std::string_view text, std::size_t at) {
    return std::min(text.find('\n', at), text.size());
}

std::size_t after_blanks(std::string_view text, std::size_t at) {
    return std::min(text.find_first_not_of(" \t", at), text.size());
}

std::size_t after_space(std::string_view text, std::size_t at) {
    while (at < text.size()) {
        at = std::min(text.find_first_not_of(" \t\r\n", at), text.size());
        if (at == text.size() || text[at] != '#') break;
        at = after_comment(text, at);
    }
    return at;
}

} // namespace rillwatt::toml_lexer
