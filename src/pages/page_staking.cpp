#include "rillwatt/layout/taping.hpp"
#include "rillwatt/layout/trench.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include "page_html.hpp"
#include "page_sections.hpp"

namespace rillwatt {

namespace {

/// The distances of one part from every mark, each with the mark's name; they wrap where the page is narrow.
std::string distances_cell(const Site& site, const std::vector<std::vector<TapedPart>>& from,
                           std::size_t part) {
    std::string cell;
    for (std::size_t mark = 0; mark < from.size(); ++mark)
        cell += fmt::format("{}{} <b>{}</b>", mark == 0 ? "" : " \u00b7 ", html_text(site.marks[mark].id),
                            length_text(from[mark][part].from_first, site.settings.units));
    return cell;
}

/// How far each part lies from each mark: any two of them find it again.
std::string taped_table(const Site& site) {
    std::vector<std::vector<TapedPart>> from;
    for (std::size_t mark = 0; mark < site.marks.size(); ++mark)
        from.push_back(taped_distances(site, site.marks[mark], site.marks[mark == 0 ? 1 : 0]));
    std::string out =
        table_open(fmt::format("Any two marks find a part. Side: as seen when walking from {} to {}",
                               site.marks[0].id, site.marks[1].id),
                   {"Part", "Taped from", "Side"});
    for (std::size_t part = 0; part < from.front().size(); ++part) {
        const TapedPart& first = from.front()[part];
        out += fmt::format("<tr{}><th scope=\"row\">{}</th><td>{}</td><td>{}</td></tr>\n",
                           part_attribute(first.id), part_link(first.id), distances_cell(site, from, part),
                           first.left ? "left" : "right");
    }
    return out + "</tbody></table>\n";
}

std::string trench_text(const Assessment& assessment) {
    const std::vector<TrenchStretch> stretches = trench_stretches(*assessment.site, assessment.lengths);
    if (stretches.empty()) return "";
    const LengthUnit unit = assessment.site->settings.units;
    const auto on = [&](TrenchGround ground) {
        return decimal_length_text(trench_length(stretches, ground), unit, 0);
    };
    return fmt::format(
        "<p>Along the routes on the plan: {} to dig, {} through sleeves, {} under water, {} to get through "
        "paving or a building. Cables that lie in one trench are counted once.</p>\n",
        on(TrenchGround::soil), on(TrenchGround::sleeve), on(TrenchGround::water), on(TrenchGround::paving));
}

} // namespace

std::string staking_section(const ReportPageParts& parts) {
    const Site& site = *parts.site.assessment.site;
    const std::string trench = trench_text(parts.site.assessment);
    if (site.marks.size() < 2 && trench.empty()) return "";
    std::string out = section_open("staking", "Digging and staking out") + trench;
    if (site.marks.size() >= 2)
        out += "<p>Two tape measures, one from each of two marks: where both lengths meet stands the part. "
               "Keep the "
               "list: it finds "
               "every buried joint again.</p>\n" +
               taped_table(site);
    else
        out += "<p>Two marks in the site file give a list of taped distances here.</p>\n";
    return out + "</section>\n";
}

} // namespace rillwatt
