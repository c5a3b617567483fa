#pragma once

#include "rillwatt/circuit/circuit.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

namespace rillwatt {

/// The catalog entry a part names, or null and an error that gives the nearest entry.
template<class Map>
const typename Map::mapped_type* look_up(const Map& entries, const std::string& key, const char* what,
                                         const Part& part, std::vector<InputError>& errors) {
    if (const auto* entry = find_entry(entries, key)) return entry;
    std::vector<std::string> known;
    for (const auto& [id, entry] : entries)
        known.push_back(id);
    std::string expected = fmt::format("a {} of the catalog", what);
    if (const auto nearest = nearest_spelling(key, known))
        expected += fmt::format("; nearest is \"{}\"", *nearest);
    errors.push_back({part.location,
                      fmt::format("{} \"{}\" of \"{}\" is in no catalog", what, key, part.id),
                      expected,
                      {}});
    return nullptr;
}

} // namespace rillwatt
