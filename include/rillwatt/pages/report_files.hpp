#pragma once

#include "rillwatt/plan/site_report.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// One file of a report: a plain name without folder, never taken from the site file, and its whole text.
struct ReportFile {
    std::string name;
    std::string text;
};

/// Everything the report of a site consists of, in the order it is to be written.
std::vector<ReportFile> report_files(const SiteReport& report);

} // namespace rillwatt
