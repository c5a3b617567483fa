#pragma once

#include "rillwatt/pages/report_page.hpp"

#include <string>

namespace rillwatt {

// The sections of the report page, each a whole `<section>`; one that has nothing to show is empty.

std::string summary_section(const ReportPageParts& parts);
std::string drawings_sections(const ReportPageParts& parts);
std::string lamps_section(const ReportPageParts& parts);
std::string loads_section(const ReportPageParts& parts);
std::string findings_section(const ReportPageParts& parts);
std::string bill_section(const ReportPageParts& parts);
std::string cut_list_section(const ReportPageParts& parts);
std::string commissioning_section(const ReportPageParts& parts);
std::string staking_section(const ReportPageParts& parts);
std::string mains_section(const ReportPageParts& parts);
std::string cost_section(const ReportPageParts& parts);
std::string method_section(const ReportPageParts& parts);
std::string cautions_section();

} // namespace rillwatt
