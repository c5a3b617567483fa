#pragma once

#include <cstddef>
#include <string_view>

namespace rillwatt::toml_lexer {

/// Each returns the offset of the first byte after what begins at `at`, never beyond the end of the text.
/// They take the text to be valid TOML and stay within it when it is not.

/// A string in any of TOML's four quotes.
std::size_t after_string(std::string_view text, std::size_t at);

/// A comment, up to its line end.
std::size_t after_comment(std::string_view text, std::size_t at);

/// Blanks and tabs.
std::size_t after_blanks(std::string_view text, std::size_t at);

/// Blanks, line ends and comments.
std::size_t after_space(std::string_view text, std::size_t at);

} // namespace rillwatt::toml_lexer
