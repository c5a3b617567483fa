#pragma once

#include "rillwatt/circuit/circuit.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

namespace rillwatt {

/// The catalog entry a part names under a key of the site file, or null and an error that gives the nearest
/// entry. `what` is the entry in words.
template<class Map>
const typename Map::mapped_type* look_up(const Map& entries, const std::string& id, std::string_view key,
                                         std::string_view what, const Part& part,
                                         std::vector<InputError>& errors) {
    if (const auto* entry = find_entry(entries, id)) return entry;
    std::vector<std::string> known;
    for (const auto& [known_id, entry] : entries)
        known.push_back(known_id);
    std::string expected = fmt::format("a {} of the catalog", what);
    if (const auto nearest = nearest_spelling(id, known))
        expected += fmt::format("; nearest is \"{}\"", *nearest);
    errors.push_back({part.location,
                      fmt::format("{} \"{}\" of \"{}\" is in no catalog", what, id, part.id),
                      expected,
                      {},
                      key});
    return nullptr;
}

} // namespace rillwatt
