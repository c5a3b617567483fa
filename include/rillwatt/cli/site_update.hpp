#pragma once

#include "rillwatt/cli/load_site.hpp"
#include "rillwatt/document/document_edit.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// What a command worked out from a site file and writes into it.
struct SiteUpdate {
    std::vector<KeyChange> values;
    std::string appended;
    std::span<const std::string_view> no_bearing; ///< tables of the site file that it was not worked out from
};

/// Puts an update into the site file as it stands by now. What was saved there since it was read stays: where
/// that has no bearing on the update (comments, spacing, other tables), the update goes into the new text,
/// else nothing is written. Errors go to `console.err`. Returns whether the file holds the update.
bool update_site_file(const LoadedSite& loaded, const SiteUpdate& update, Console& console);

} // namespace rillwatt
