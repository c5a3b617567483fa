#pragma once

#include "rillwatt/text/catalog_text.hpp"

#include <string>

namespace rillwatt {

/// The entries that a query asks for, for programs.
std::string catalog_json(const Catalog& catalog, const CatalogQuery& query);

} // namespace rillwatt
