#include "rillwatt/pages/report_files.hpp"

#include "rillwatt/drawing/diagram_svg.hpp"
#include "rillwatt/drawing/plan_svg.hpp"
#include "rillwatt/exchange/bill_csv.hpp"
#include "rillwatt/exchange/tables_csv.hpp"
#include "rillwatt/pages/electrician_page.hpp"
#include "rillwatt/pages/light_section.hpp"
#include "rillwatt/pages/report_page.hpp"

namespace rillwatt {

namespace {

/// A drawing as a file of its own.
std::string svg_file(const std::string& svg) {
    return svg.empty() ? svg : "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + svg + "\n";
}

} // namespace

std::vector<ReportFile> report_files(const SiteReport& report) {
    const Site& site = *report.assessment.site;
    const std::string plan = plan_svg(report.assessment);
    const std::string diagram = diagram_svg(report.assessment);
    const std::string light = light_section(report.assessment);
    std::vector<ReportFile> files = {
        {"report.html", report_page({report, plan, diagram, light})},
        {"electrician.html", electrician_html(report.sheet)},
        {"electrician.txt", electrician_text(report.sheet)},
        {"bill.csv", bill_csv(report.bill, site.settings.currency)},
        {"plan.svg", svg_file(plan)},
        {"diagram.svg", svg_file(diagram)},
        {"lamps.csv", lamps_csv(site, report.lamps)},
        {"cutlist.csv", cut_list_csv(site, report.cuts)},
    };
    std::erase_if(files, [](const ReportFile& file) { return file.text.empty(); });
    return files;
}

} // namespace rillwatt
