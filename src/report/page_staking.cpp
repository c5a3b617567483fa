#include "rillwatt/layout/taping.hpp"
#include "rillwatt/layout/trench.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/report/escape.hpp"

#include <fmt/format.h>

#include "page_html.hpp"
#include "page_sections.hpp"

namespace rillwatt {

namespace {

std::string taped_row(const TapedPart& part, LengthUnit unit) {
    return fmt::format(
        "<tr{}><th scope=\"row\">{}</th><td class=\"n\">{}</td><td class=\"n\">{}</td><td>{}</td></tr>\n",
        part_attribute(part.id), part_link(part.id), length_text(part.from_first, unit),
        length_text(part.from_second, unit), part.left ? "left" : "right");
}

std::string taped_table(const Site& site, const Mark& first, const Mark& second) {
    std::string out = table_open(fmt::format("Side: as seen when walking from {} to {}", first.id, second.id),
                                 {"Part", "#From " + first.id, "#From " + second.id, "Side"});
    for (const TapedPart& part : taped_distances(site, first, second))
        out += taped_row(part, site.settings.units);
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
    const Site& site = *parts.assessment.site;
    const std::string trench = trench_text(parts.assessment);
    if (site.marks.size() < 2 && trench.empty()) return "";
    std::string out = section_open("staking", "Digging and staking out") + trench;
    if (site.marks.size() >= 2)
        out += "<p>Two tape measures, one from each mark: where both lengths meet stands the part. Keep the "
               "list: it finds "
               "every buried joint again.</p>\n" +
               taped_table(site, site.marks[0], site.marks[1]);
    else
        out += "<p>Two marks in the site file give a list of taped distances here.</p>\n";
    return out + "</section>\n";
}

} // namespace rillwatt
