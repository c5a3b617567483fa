#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/check_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include "page_html.hpp"
#include "page_sections.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

constexpr std::size_t shown_findings = 4;

std::size_t count_of(const std::vector<Finding>& findings, Severity severity) {
    return static_cast<std::size_t>(std::count_if(
        findings.begin(), findings.end(), [&](const Finding& each) { return each.severity == severity; }));
}

std::string figure(std::string_view name, const std::string& value, const std::string& remark) {
    return fmt::format("<li><span class=\"key\">{}</span> <span class=\"value\">{}{}</span></li>\n", name,
                       value, remark.empty() ? "" : "<small>" + remark + "</small>");
}

std::string worst_lamp_figure(const SiteReport& report) {
    const std::string count = fmt::format("{}", report.lamps.size());
    if (!report.summary.worst_lamp) return figure("Lamps", count, "no volts computed yet");
    const LampRow& worst = report.lamps[*report.summary.worst_lamp];
    return figure("Lamps", count, "") +
           figure("Least margin", volts_text(*worst.margin), html_text(worst.fixture->id));
}

std::string cable_figure(const SiteReport& report, LengthUnit unit) {
    return figure("Cable", decimal_length_text(report.summary.cable, unit, 0),
                  fmt::format("in {} pieces", report.cuts.pieces.size()));
}

std::string load_figure(const SiteReport& report) {
    if (!report.summary.fullest) return "";
    const Assessment& assessment = report.assessment;
    const TransformerResult& fullest = assessment.solution.nominal().transformers[*report.summary.fullest];
    return figure("Fullest transformer", percent_text(fullest.loading),
                  html_text(assessment.site->transformers[fullest.transformer].id));
}

std::string energy_figure(const Assessment& assessment) {
    const RunningCost& cost = assessment.mains.cost;
    return figure("Energy a year", fixed_text(kilowatt_hours(cost.pumps + cost.lights), 0) + " kWh",
                  fmt::format("lights {}, pumps {}", fixed_text(kilowatt_hours(cost.lights), 0),
                              fixed_text(kilowatt_hours(cost.pumps), 0)));
}

/// What the rules have against building it.
std::string verdict_word(const std::vector<Finding>& findings) {
    if (any_error(findings)) return state_word("error", "do not build yet");
    const std::size_t warnings = count_of(findings, Severity::warning);
    if (warnings == 0) return state_word("good", "the rules find nothing against it");
    return state_word("warning", warnings == 1 ? "works, but decide on the warning before you build"
                                               : "works, but decide on the warnings before you build");
}

std::string wrong_panel(const std::vector<Finding>& findings) {
    std::string out =
        fmt::format("<div class=\"panel{}\"><h3>What is wrong</h3>\n", any_error(findings) ? " alarm" : "");
    const auto grave = std::count_if(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.severity != Severity::note;
    });
    out += fmt::format("<p>{}{}.</p>\n", verdict_word(findings), findings_count_text(findings));
    std::string worst;
    for (std::size_t i = 0; i < findings.size() && i < shown_findings; ++i)
        if (findings[i].severity != Severity::note)
            worst += fmt::format("<li{}>{}</li>\n",
                                 findings[i].part.empty() ? "" : part_attribute(findings[i].part),
                                 sentence_html(findings[i].message));
    if (!worst.empty()) out += "<ul>\n" + worst + "</ul>\n";
    if (grave > static_cast<std::ptrdiff_t>(shown_findings))
        out += "<p>And more: <a href=\"#findings\">all findings</a>.</p>\n";
    return out + "</div>\n";
}

std::string buy_panel(const Bill& bill, const SiteSettings& settings) {
    std::string out = "<div class=\"panel lamp\"><h3>What to buy</h3>\n";
    if (bill.lines.empty()) return out + "<p>Nothing can be counted yet: too much is still open.</p></div>\n";
    out += fmt::format("<p>{} for {} lines, <a href=\"#bill\">the bill</a>.</p>\n<ul>\n",
                       html_text(money_text(bill.total, settings.currency)), bill.lines.size());
    for (BillKind kind :
         {BillKind::transformer, BillKind::fixture, BillKind::cable, BillKind::pump, BillKind::accessory}) {
        Money sum;
        bool any = false;
        for (const BillLine& line : bill.lines) {
            if (line.kind != kind || !line.cost) continue;
            sum += *line.cost;
            any = true;
        }
        if (any) out += fmt::format("<li>{}: {}</li>\n", bill_kind_name(kind), fixed_text(sum.value(), 2));
    }
    return out + "</ul></div>\n";
}

std::string next_panel(const ReportPageParts& parts) {
    const Assessment& assessment = parts.site.assessment;
    std::string out = "<div class=\"panel\"><h3>What to do next</h3>\n<ol>\n";
    if (!assessment.circuits.open.empty())
        out += fmt::format(
            "<li>Fill the {} open values of the site file: <code>rillwatt size</code> chooses cable, tap and "
            "transformer.</li>\n",
            assessment.circuits.open.size());
    if (any_error(assessment.findings))
        out += "<li>Fix the <a href=\"#findings\">errors</a> and make this report again.</li>\n";
    else if (count_of(assessment.findings, Severity::warning) > 0)
        out +=
            "<li>Decide on the <a href=\"#findings\">warnings</a>: fix them, or build knowing them.</li>\n";
    if (!assessment.mains.circuits.empty())
        out += "<li>Hand <code>electrician.html</code> to a licensed electrician for the line-voltage "
               "side.</li>\n";
    out += "<li>Have buried services located before anyone digs.</li>\n";
    if (!parts.site.bill.lines.empty())
        out += "<li>Load the truck by the <a href=\"#bill\">bill</a>, cut and tag the cable by the "
               "<a href=\"#cuts\">cut list</a>.</li>\n";
    if (assessment.site->marks.size() >= 2)
        out += "<li>Stake out by the <a href=\"#staking\">taped distances</a>.</li>\n";
    if (!assessment.solution.nominal().transformers.empty())
        out += "<li>When the electrician has finished, switch on and measure by the "
               "<a href=\"#commissioning\">commissioning sheet</a>.</li>\n";
    return out + "</ol></div>\n";
}

std::string drawing(std::string_view svg, std::string_view caption) {
    return fmt::format(
        "<figure class=\"drawing\" tabindex=\"0\" role=\"group\" aria-label=\"{}\">{}</figure>\n"
        "<p class=\"small soft\">{}</p>\n",
        html_text(caption), svg, html_text(caption));
}

} // namespace

std::string summary_section(const ReportPageParts& parts) {
    const SiteSettings& settings = parts.site.assessment.site->settings;
    std::string out = section_open("summary", "Summary");
    out += "<ul class=\"figures\">\n" + worst_lamp_figure(parts.site) + load_figure(parts.site) +
           cable_figure(parts.site, settings.units) + energy_figure(parts.site.assessment) + "</ul>\n";
    out += "<div class=\"panels\">\n" + wrong_panel(parts.site.assessment.findings) + next_panel(parts) +
           buy_panel(parts.site.bill, settings) + "</div>\n";
    return out + "</section>\n";
}

std::string drawings_sections(const ReportPageParts& parts) {
    std::string out = section_open("plan", "Plan", !parts.plan_svg.empty());
    out += parts.plan_svg.empty()
               ? "<p>The site file gives no places, so there is no plan: write <code>at</code> on parts "
                 "and areas to get one.</p>\n"
               : drawing(parts.plan_svg, "Plan of the site, to scale");
    out += "</section>\n";
    if (!parts.diagram_svg.empty())
        out += section_open("diagram", "Single-line diagram") +
               drawing(parts.diagram_svg, "Single-line diagram of the low-voltage circuits") + "</section>\n";
    return out;
}

} // namespace rillwatt
