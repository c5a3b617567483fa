#pragma once

#include "rillwatt/text/catalog_text.hpp"

#include <string_view>
#include <vector>

namespace rillwatt {

/// The entries of one kind that a query asks for, in the catalog's order.
template<class Map>
std::vector<const typename Map::mapped_type*> matching(const Map& entries, const CatalogQuery& query,
                                                       std::string_view kind);

/// Whether every word of the query occurs in the text; case does not matter.
bool all_words_in(const CatalogQuery& query, std::string_view text);

/// What of an entry is searched beside its kind.
std::string searched_text(const CatalogEntry& entry);
std::string searched_text(const FixtureType& entry);
std::string searched_text(const ConductorTable& entry);

template<class Map>
std::vector<const typename Map::mapped_type*> matching(const Map& entries, const CatalogQuery& query,
                                                       std::string_view kind) {
    std::vector<const typename Map::mapped_type*> found;
    if (!query.kind.empty() && query.kind != kind) return found;
    for (const auto& [id, entry] : entries)
        if (all_words_in(query, std::string(kind) + ' ' + searched_text(entry))) found.push_back(&entry);
    return found;
}

} // namespace rillwatt
