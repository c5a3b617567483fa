#include "abridged.hpp"

#include <algorithm>

namespace rillwatt {
namespace {

/// An entry of a catalog file, or what stands before the first.
struct Part {
    std::string_view text;
    std::string_view kind; ///< "cable"; empty before the first entry
    std::string_view id;
    bool kept = false;
};

/// Kinds of entries, each before those that it names others of.
constexpr std::string_view kinds_in_order[] = {"fixture",   "transformer", "pump",
                                               "accessory", "cable",       "conductor_table"};

/// The part that a text begins with: up to the next header at the beginning of a line.
Part first_part(std::string_view text) {
    std::size_t end = text.find('[', 1);
    while (end != std::string_view::npos && text[end - 1] != '\n')
        end = text.find('[', end + 1);
    Part part{text.substr(0, end), {}, {}};
    const std::size_t dot = part.text.find('.');
    if (!part.text.starts_with('[') || dot == std::string_view::npos) return part;
    part.kind = part.text.substr(1, dot - 1);
    const bool quoted = part.text.substr(dot + 1).starts_with('"');
    const std::size_t begin = dot + (quoted ? 2 : 1);
    part.id = part.text.substr(begin, part.text.find_first_of(quoted ? "\"" : ".]", begin) - begin);
    return part;
}

using Parts = std::vector<Part>;

Parts parts_of(std::string_view text) {
    Parts parts;
    for (; !text.empty(); text.remove_prefix(parts.back().text.size()))
        parts.push_back(first_part(text));
    return parts;
}

void keep_named(std::vector<Parts>& files, EntryNames& named) {
    for (const std::string_view kind : kinds_in_order) {
        for (Parts& file : files) {
            for (Part& part : file) {
                part.kept = part.kept || (part.kind == kind && named.contains(part.id));
                if (part.kept) add_quoted(named, part.text);
            }
        }
    }
}

std::string joined(const Parts& parts) {
    std::string text;
    if (std::none_of(parts.begin(), parts.end(), [](const Part& part) { return part.kept; })) return text;
    for (const Part& part : parts) {
        if (part.kept || part.kind.empty())
            text += part.text;
        else
            text.append(static_cast<std::size_t>(std::count(part.text.begin(), part.text.end(), '\n')), '\n');
    }
    return text;
}

} // namespace

void add_quoted(EntryNames& names, std::string_view text) {
    while (!text.empty()) {
        const std::string_view line = text.substr(0, text.find('\n'));
        text.remove_prefix(std::min(text.size(), line.size() + 1));
        for (std::size_t begin = line.find('"'); begin != std::string_view::npos;) {
            const std::size_t end = line.find('"', begin + 1);
            if (end == std::string_view::npos) break;
            names.insert(line.substr(begin + 1, end - begin - 1));
            begin = line.find('"', end + 1);
        }
    }
}

std::vector<std::string> abridged(std::span<const BuiltInFile> files, EntryNames named) {
    std::vector<Parts> parts;
    for (const BuiltInFile& file : files)
        parts.push_back(parts_of(file.text));
    keep_named(parts, named);
    std::vector<std::string> texts;
    for (const Parts& file : parts)
        texts.push_back(joined(file));
    return texts;
}

} // namespace rillwatt
