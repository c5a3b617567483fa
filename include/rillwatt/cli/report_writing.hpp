#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/cli/command.hpp"
#include "rillwatt/cli/load_site.hpp"

#include <optional>
#include <string>

namespace rillwatt {

/// Assesses a loaded site with its light. Input errors go to `console.err`.
std::optional<Assessment> assess_with_light(const LoadedSite& loaded, Console& console);

/// Writes every file of a site's report into a folder, each whole or not at all, and nothing outside of it.
/// The folder is made when the one above it exists. Files of an earlier report are replaced only with
/// `force`. Returns what stood in the way, empty when all were written; `written` gets the paths.
std::string write_report(const Assessment& assessment, const std::string& folder, bool force,
                         std::vector<std::string>& written);

} // namespace rillwatt
