#pragma once

#include <string>
#include <string_view>

namespace rillwatt {

/// What a slip of TOML is, and what should stand there instead.
struct SyntaxWords {
    std::string found;
    std::string expected;
};

/// The library's description of a syntax error in the words of someone who writes site files; the description
/// itself where it is of no common slip. `line` is the line of the error.
SyntaxWords syntax_words(std::string_view description, std::string_view line);

} // namespace rillwatt
