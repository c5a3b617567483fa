#include "part_index.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <bit>

namespace rillwatt {
namespace {

constexpr std::string_view words_by_bit[] = {"a circuit", "a pump", "a transformer", "a run",    "a splice",
                                             "a fixture", "a link", "an area",       "a sleeve", "a mark",
                                             "a walk",    "falls",  "a viewpoint"};

} // namespace

std::string_view part_kind_words(PartKind kind) {
    return words_by_bit[static_cast<std::size_t>(std::countr_zero(static_cast<std::uint32_t>(kind)))];
}

void PartIndex::add(ValueReader& reader, const Value& id, PartKind kind) {
    const std::string_view* text = id.text();
    if (text == nullptr || text->empty()) return;
    const auto [known, is_new] = parts_.try_emplace(*text, Known{kind, id.line, in_order_.size()});
    if (is_new)
        in_order_.emplace_back(*text, kind);
    else
        reader.error(id.line,
                     fmt::format("id {} is already that of {} on line {}", shown_id(*text),
                                 part_kind_words(known->second.kind), known->second.line),
                     "an id that no other part of the file has");
}

std::string PartIndex::nearest(std::string_view id, std::uint32_t kinds) {
    if (searches_left_-- <= 0) return {};
    std::vector<std::string> ids;
    for (const auto& [name, kind] : in_order_)
        if ((kind & kinds) != 0) ids.emplace_back(name);
    const std::optional<std::string> found = nearest_spelling(id, ids);
    return found ? fmt::format("; nearest is {}", shown_id(*found)) : std::string();
}

bool PartIndex::is_near(std::string_view id, std::uint32_t kinds) {
    for (std::size_t at = near_; at < std::min(near_ + 2, in_order_.size()); ++at) {
        if (in_order_[at].first != id || (in_order_[at].second & kinds) == 0) continue;
        near_ = at;
        return true;
    }
    return false;
}

void PartIndex::check(ValueReader& reader, const PendingReference& reference) {
    const std::string_view* id = reference.value->text();
    if (id == nullptr || id->empty()) return;
    const FieldSpec& field = *reference.field;
    if (is_near(*id, field.targets)) return;
    const auto part = parts_.find(*id);
    if (part != parts_.end() && (part->second.kind & field.targets) != 0) {
        near_ = part->second.place;
        return;
    }
    const std::string found =
        part == parts_.end()
            ? fmt::format("`{}` names {}, which is nothing in this file", field.key, shown_id(*id))
            : fmt::format("`{}` names {}, which is {}", field.key, shown_id(*id),
                          part_kind_words(part->second.kind));
    reader.error(reference.value->line, found,
                 fmt::format("the id of {}{}", field.target_words, nearest(*id, field.targets)));
}

} // namespace rillwatt
