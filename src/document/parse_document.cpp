#include "rillwatt/document/document.hpp"

#include "document_limits.hpp"
#include "plain_toml.hpp"
#include "toml_library.hpp"
#include <algorithm>

namespace rillwatt {
namespace {

/// What a limit refuses may follow from a mistake further up, such as a quote that was forgotten: then that
/// is what to tell.
InputError first_error(std::string_view text, const InputError& error) {
    std::size_t line_begin = 0;
    for (int line = 1; line < error.location.line; ++line)
        line_begin = text.find('\n', line_begin) + 1;
    constexpr std::size_t quickly_read = 1u << 20;
    const std::string_view above = text.substr(0, line_begin);
    if (above.empty() || above.size() > quickly_read || exceeded_limit(above, "", {})) return error;
    const LoadResult<Table> read = read_toml_by_library(above, error.location.file);
    const bool is_above = !read && read.errors.front().location.line < error.location.line;
    return is_above ? read.errors.front() : error;
}

/// Whether a text that reads as plain TOML can exceed no limit: it holds fewer values than bytes.
bool plain_toml_stays_within(std::string_view text, const DocumentLimits& limits) {
    return text.size() <= std::min(limits.bytes, limits.values) && limits.nesting >= plain_toml_nesting &&
           limits.dotted_keys >= plain_toml_nesting;
}

} // namespace

LoadResult<Document> parse_document(std::string_view text, const std::string& file,
                                    const DocumentLimits& limits) {
    const bool surely_within = plain_toml_stays_within(text, limits);
    if (surely_within)
        if (std::optional<Table> plain = read_plain_toml(text))
            return {Document(file, text, std::move(*plain)), {}};
    if (const std::optional<InputError> error = exceeded_limit(text, file, limits))
        return {{}, {first_error(text, *error)}};
    if (!surely_within)
        if (std::optional<Table> plain = read_plain_toml(text))
            return {Document(file, text, std::move(*plain)), {}};
    LoadResult<Table> root = read_toml_by_library(text, file);
    if (!root) return {{}, std::move(root.errors)};
    return {Document(file, text, std::move(*root.value)), {}};
}

} // namespace rillwatt
