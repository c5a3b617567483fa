#pragma once

#include "rillwatt/pages/report_files.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// Writes every file of a site's report into a folder, each whole or not at all, and nothing outside of it.
/// The folder is made when the one above it exists. Files of an earlier report are replaced only with
/// `force`. Returns what stood in the way, empty when all were written; `written` gets the paths.
std::string write_report(const std::vector<ReportFile>& report, const std::string& folder, bool force,
                         std::vector<std::string>& written);

} // namespace rillwatt
