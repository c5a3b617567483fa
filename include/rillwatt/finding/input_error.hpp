#pragma once

#include "rillwatt/finding/finding.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// Something in a user's file that cannot be read. Loading collects all of them before it gives up.
struct InputError {
    SourceLocation location;
    std::string found;       ///< what stands there, in words: "unknown key `colour`"
    std::string expected;    ///< what should: "one of `id`, `model`, ...; nearest is `color`"
    std::string source_line; ///< the line as written, for display; may be empty
};

/// The value read, or everything that stood in the way: never both.
template<class T>
struct LoadResult {
    std::optional<T> value;
    std::vector<InputError> errors;

    explicit operator bool() const { return value.has_value(); }
};

/// `FILE:LINE: error: what was found; what was expected`, then the source line, each ending in a newline.
std::string input_error_text(const InputError& error);

/// The candidate whose spelling is nearest to `word`, when it is near enough to be what was meant.
std::optional<std::string> nearest_spelling(std::string_view word,
                                            const std::vector<std::string>& candidates);

/// Control characters and broken UTF-8 made visible, so that a user's text cannot steer a terminal or a page.
std::string printable(std::string_view text);

} // namespace rillwatt
