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
    std::string expected;    ///< completes "expected ...": "one of `id`, `model`, ...; nearest is `color`"
    std::string source_line; ///< the line as written, for display; may be empty
    std::string_view
        key; ///< of the part at `location` whose value is meant: "tap"; empty: the part as a whole
};

/// The value read, or everything that stood in the way: never both.
template<class T>
struct LoadResult {
    std::optional<T> value;
    std::vector<InputError> errors;

    explicit operator bool() const { return value.has_value(); }
};

/// `FILE:LINE: error: what was found; expected what was expected`, then the source line indented, each ending
/// in a newline; without a file from `error:` on. `found` and `expected` must already be printable.
std::string input_error_text(const InputError& error);

/// The candidate whose spelling is nearest to `word`, when it is near enough to be what was meant.
std::optional<std::string> nearest_spelling(std::string_view word,
                                            const std::vector<std::string>& candidates);

/// Control characters and broken UTF-8 made visible, so that a user's text cannot steer a terminal or a page.
std::string printable(std::string_view text);

/// Whether `printable` would leave the text as it is.
bool is_printable(std::string_view text);

/// A line of a user's file without its line end, cut where it is too long to display.
std::string shortened_line(std::string_view line);

/// Fills in the empty `source_line` of every error that is located in `file`, whose whole text is given.
void add_source_lines(std::vector<InputError>& errors, std::string_view file, std::string_view text);

} // namespace rillwatt
