#include "abridged.hpp"

#include <algorithm>

namespace rillwatt {
namespace {

/// The tables that nothing else in a catalog builds on.
constexpr std::string_view left_out_kinds[] = {"fixture", "transformer", "pump", "accessory"};

/// The id of `[kind.id]` in quotes or without; empty where the header is another.
std::string_view id_of_header(std::string_view header) {
    const std::size_t dot = header.find('.');
    if (!header.starts_with('[') || dot == std::string_view::npos) return {};
    const std::string_view kind = header.substr(1, dot - 1);
    if (std::find(std::begin(left_out_kinds), std::end(left_out_kinds), kind) == std::end(left_out_kinds))
        return {};
    std::string_view id = header.substr(dot + 1);
    const bool quoted = id.starts_with('"');
    if (quoted) id.remove_prefix(1);
    return id.substr(0, id.find(quoted ? '"' : ']'));
}

/// Bytes up to the next header at the beginning of a line, and the lines they end.
struct Stretch {
    std::size_t bytes = 0;
    std::size_t lines = 0;
};

Stretch up_to_header(std::string_view text) {
    Stretch stretch;
    do {
        const std::size_t end = text.find('\n', stretch.bytes);
        if (end == std::string_view::npos) return {text.size(), stretch.lines};
        stretch.bytes = end + 1;
        ++stretch.lines;
    } while (stretch.bytes < text.size() && text[stretch.bytes] != '[');
    return stretch;
}

} // namespace

std::string abridged(std::string_view text, const EntryNames& named) {
    std::string kept;
    kept.reserve(text.size());
    while (!text.empty()) {
        const Stretch stretch = up_to_header(text);
        const std::string_view part = text.substr(0, stretch.bytes); // a header and what stands below it
        text.remove_prefix(part.size());
        const std::string_view id = id_of_header(part);
        if (id.empty() || named.contains(id))
            kept += part;
        else
            kept.append(stretch.lines, '\n');
    }
    return kept;
}

} // namespace rillwatt
