#include "rillwatt/pages/report_page.hpp"

#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/text/check_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include "page_html.hpp"
#include "page_sections.hpp"
#include "page_style.hpp"
#include <vector>

namespace rillwatt {

namespace {

struct PageSection {
    std::string_view anchor;
    std::string_view label; ///< in the contents list
    std::string html;
};

std::vector<PageSection> all_sections(const ReportPageParts& parts) {
    std::vector<PageSection> sections = {
        {"summary", "Summary", summary_section(parts)},
        {"plan", "Plan", drawings_sections(parts)},
        {"lamps", "Lamps", lamps_section(parts)},
        {"loads", "Loads", loads_section(parts)},
        {"findings", "Findings", findings_section(parts)},
        {"bill", "Bill", bill_section(parts)},
        {"cuts", "Cut list", cut_list_section(parts)},
        {"staking", "Staking out", staking_section(parts)},
        {"commissioning", "Commissioning", commissioning_section(parts)},
        {"light", "Light", std::string(parts.light_html)},
        {"mains", "Line voltage", mains_section(parts)},
        {"cost", "Running cost", cost_section(parts)},
        {"method", "Method", method_section(parts)},
        {"cautions", "Cautions", cautions_section()},
    };
    std::erase_if(sections, [](const PageSection& section) { return section.html.empty(); });
    return sections;
}

std::string head(const SiteSettings& settings) {
    return fmt::format("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                       "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
                       "style-src 'unsafe-inline'; script-src 'sha256-{}'; img-src data:; base-uri 'none'; "
                       "form-action 'none'\">\n"
                       "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                       "<title>{}: lighting and water plan</title>\n<style>{}</style>\n</head>\n",
                       page_script_hash(), html_text(settings.name), page_style());
}

std::string block_cell(std::string_view name, std::string_view value) {
    return fmt::format("<li><span class=\"key\">{}</span> <span class=\"value\">{}</span></li>", name,
                       html_text(value));
}

std::string title_block(const Assessment& assessment) {
    const Site& site = *assessment.site;
    const SiteSettings& settings = site.settings;
    std::string out =
        fmt::format("<header class=\"title\">\n<p class=\"eyebrow\">Lighting and water plan</p>\n"
                    "<h1>{}</h1>\n<ul class=\"titleblock\">",
                    html_text(settings.name));
    out += block_cell("Site file", name_of_file(site.file));
    out += block_cell("Units", settings.units == LengthUnit::feet ? "feet and inches" : "metres");
    out +=
        block_cell("Supply", fmt::format("{}, give or take {}", nominal_volts_text(settings.supply_voltage),
                                         percent_text(settings.supply_band)));
    out += block_cell("Conductor at", celsius_text(settings.conductor_temperature));
    out += block_cell("Code read", settings.code == CodeFamily::nec
                                       ? fmt::format("NFPA 70 ({})", settings.code_edition)
                                       : "IEC 60364");
    out += block_cell("Findings", findings_count_text(assessment.findings));
    return out + "</ul>\n</header>\n";
}

std::string contents(const std::vector<PageSection>& sections) {
    std::string out = "<nav class=\"contents\" aria-label=\"Contents\"><ul>";
    for (const PageSection& section : sections)
        out += fmt::format("<li><a href=\"#{}\">{}</a></li>", section.anchor, section.label);
    return out + "</ul></nav>\n";
}

} // namespace

std::string report_page(const ReportPageParts& parts) {
    const std::vector<PageSection> sections = all_sections(parts);
    std::string out = head(parts.site.assessment.site->settings);
    out += "<body>\n<a class=\"skip\" href=\"#summary\">Skip to the summary</a>\n";
    out += title_block(parts.site.assessment);
    out += contents(sections);
    out += "<main>\n";
    for (const PageSection& section : sections)
        out += section.html;
    out += "</main>\n<footer class=\"small soft\"><p>Made by rillwatt from the site file and its catalogs. "
           "Every figure "
           "can be followed with <code>rillwatt explain</code>.</p></footer>\n"
           "<p id=\"marked-part\" class=\"visually-hidden\" role=\"status\"></p>\n";
    out += fmt::format("<script>{}</script>\n</body>\n</html>\n", page_script());
    return out;
}

} // namespace rillwatt
