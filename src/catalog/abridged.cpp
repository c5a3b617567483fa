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

} // namespace

std::string abridged(std::string_view text, const EntryNames& named) {
    std::string kept;
    kept.reserve(text.size());
    while (!text.empty()) {
        const std::size_t next = text.find("\n[", 1);
        const std::string_view part = text.substr(0, next); // a header and what stands below it
        text.remove_prefix(part.size());
        const std::string_view id = id_of_header(part.substr(part.starts_with('\n') ? 1 : 0));
        if (id.empty() || named.contains(id))
            kept += part;
        else
            kept.append(static_cast<std::size_t>(std::count(part.begin(), part.end(), '\n')), '\n');
    }
    return kept;
}

} // namespace rillwatt
