#pragma once

#include "rillwatt/plan/site_report.hpp"

#include <string>
#include <string_view>

namespace rillwatt {

/// What the report page is made of. Drawings are whole `<svg>` elements, the light section is finished HTML;
/// each may be empty, its section is then left out.
struct ReportPageParts {
    const SiteReport& site;
    std::string_view plan_svg;
    std::string_view diagram_svg;
    std::string_view light_html;
};

/// The report of a site as one self-contained HTML page: it asks for nothing outside itself, is complete
/// without its script, and is set for screen, phone and paper.
std::string report_page(const ReportPageParts& parts);

} // namespace rillwatt
