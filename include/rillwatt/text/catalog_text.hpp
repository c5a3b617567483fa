#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/text_style.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// Which entries of a catalog to list.
struct CatalogQuery {
    std::string kind; ///< one of catalog_kinds(), empty: all of them
    std::vector<std::string>
        words; ///< each must occur in the entry's id, kind, note or source; case does not matter
};

/// "cable", "fixture", "transformer", "pump", "accessory", "conductor-table".
const std::vector<std::string>& catalog_kinds();

/// The entries for people, with their sources; lengths in the unit given.
std::string catalog_text(const Catalog& catalog, const CatalogQuery& query, LengthUnit unit,
                         const TextStyle& style);

} // namespace rillwatt
