#include "rillwatt/pages/report_files.hpp"

#include "rillwatt/drawing/diagram_svg.hpp"
#include "rillwatt/drawing/plan_svg.hpp"
#include "rillwatt/exchange/bill_csv.hpp"
#include "rillwatt/exchange/tables_csv.hpp"
#include "rillwatt/pages/electrician_sheet.hpp"
#include "rillwatt/pages/light_section.hpp"
#include "rillwatt/pages/report_page.hpp"
#include "rillwatt/purchase/bill.hpp"

namespace rillwatt {

namespace {

/// A drawing as a file of its own.
std::string svg_file(const std::string& svg) {
    return svg.empty() ? svg : "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + svg + "\n";
}

} // namespace

std::vector<ReportFile> report_files(const Assessment& assessment) {
    const Site& site = *assessment.site;
    const CutPlan cuts = plan_cuts(site, assessment.circuits);
    const Bill bill = make_bill(site, *assessment.catalog, assessment.lengths, assessment.circuits);
    const std::string plan = plan_svg(assessment);
    const std::string diagram = diagram_svg(assessment);
    const std::string light = light_section(assessment);
    std::vector<ReportFile> files = {
        {"report.html", report_page({assessment, bill, cuts, plan, diagram, light})},
        {"electrician.html", electrician_html(assessment)},
        {"electrician.txt", electrician_text(assessment)},
        {"bill.csv", bill_csv(bill, site.settings.currency)},
        {"plan.svg", svg_file(plan)},
        {"diagram.svg", svg_file(diagram)},
        {"lamps.csv", lamps_csv(assessment)},
        {"cutlist.csv", cut_list_csv(site, cuts)},
    };
    std::erase_if(files, [](const ReportFile& file) { return file.text.empty(); });
    return files;
}

} // namespace rillwatt
