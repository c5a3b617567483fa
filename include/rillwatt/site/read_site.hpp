#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/document/field.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/site/site.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// Reads a site file: every part with its line, taped points turned into coordinates, defaults filled in. All
/// errors are returned at once, by line. `site.catalogs` stay paths: reading them is for the caller.
LoadResult<Site> read_site(std::string_view text, const std::string& file);

/// A site file as far as it could be read: what was wrong is left out of the site.
struct SiteDraft {
    std::optional<Site> site; ///< empty only where the text is no TOML at all
    std::vector<InputError> errors;
};

/// As read_site, but hands out what it has beside the errors, so that catalogs can be looked at in the same
/// go and everything wrong be told at once. A draft with errors is for checking only.
SiteDraft read_site_draft(std::string_view text, const std::string& file);

/// Every catalog key the site names and no catalog has, with the nearest that exists. With the text of the
/// site file at hand the errors name the line of the key, else that of its part. Taps are not looked at here.
std::vector<InputError> check_against_catalog(const Site& site, const Catalog& catalog,
                                              std::string_view text = {});

/// The tables of a site file and their keys.
std::vector<TableSpec> site_tables();

} // namespace rillwatt
