#include "rillwatt/document/document.hpp"

#include "document_limits.hpp"
#include "document_memory.hpp"
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
    DocumentMemory memory;
    const LoadResult<Table> read = read_toml_by_library(above, error.location.file, memory);
    const bool is_above = !read && read.errors.front().location.line < error.location.line;
    return is_above ? read.errors.front() : error;
}

/// Whether a text that reads as plain TOML can exceed no limit: it holds fewer values than bytes.
bool plain_toml_stays_within(std::string_view text, const DocumentLimits& limits) {
    return text.size() <= std::min(limits.bytes, limits.values) && limits.nesting >= plain_toml_nesting &&
           limits.dotted_keys >= plain_toml_nesting;
}

} // namespace

LoadResult<Document> parse_document(std::string_view text, const FileName& file,
                                    const DocumentLimits& limits) {
    auto memory = std::make_unique<DocumentMemory>();
    const std::string_view kept = memory->keep(text);
    const bool surely_within = plain_toml_stays_within(text, limits);
    std::optional<Table> root;
    if (surely_within) root = read_plain_toml(kept, *memory);
    if (!root) {
        if (const std::optional<InputError> error = exceeded_limit(text, file, limits))
            return {{}, {first_error(text, *error)}};
        if (!surely_within) root = read_plain_toml(kept, *memory);
    }
    if (!root) {
        LoadResult<Table> read = read_toml_by_library(text, file, *memory);
        if (!read) return {{}, std::move(read.errors)};
        root = *read.value;
    }
    return {Document(file, std::move(memory), kept, *root), {}};
}

} // namespace rillwatt
