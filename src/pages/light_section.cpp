#include "rillwatt/pages/light_section.hpp"

#include "rillwatt/drawing/light_plan.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/text/escape.hpp"
#include "rillwatt/text/light_text.hpp"

#include <fmt/format.h>

namespace rillwatt {

namespace {

std::string verdict_word(const std::string& verdict) {
    const bool good = verdict == "enough" || verdict == "lit";
    return fmt::format("<span class=\"word {}\">{}</span>", good ? "good" : "warning", verdict);
}

std::string number_cell(const std::string& text) { return fmt::format("<td class=\"n\">{}</td>", text); }

std::string head_cells(std::initializer_list<const char*> names) {
    std::string out = "<thead><tr>";
    bool first = true;
    for (const char* name : names) {
        out += fmt::format("<th scope=\"col\"{}>{}</th>", first ? "" : " class=\"n\"", name);
        first = false;
    }
    return out + "<th scope=\"col\">Verdict</th></tr></thead>\n";
}

std::string walks_table(const Site& site, const LightResult& light) {
    if (light.walks.empty()) return "";
    std::string out = "<table>\n<caption>Walks: level light on the ground</caption>\n" +
                      head_cells({"Walk", "Mean", "Darkest", "Brightest", "Min / mean"}) + "<tbody>\n";
    for (const WalkLight& walk : light.walks) {
        const Walk& written = site.walks[walk.walk];
        out +=
            fmt::format("<tr data-part=\"{0}\"><th scope=\"row\">{0}<span class=\"sub\">asks {1}</span></th>",
                        html_text(written.id), html_text(walk_target_text(written, walk)));
        out += number_cell(lux_text(walk.mean)) +
               number_cell(lux_text(walk.minimum) +
                           fmt::format("<span class=\"sub\">at {}</span>",
                                       plan_point_text(on_plan(walk.darkest), site.settings.units))) +
               number_cell(lux_text(walk.maximum)) + number_cell(fixed_text(walk.uniformity, 2));
        out += "<td>" + verdict_word(walk_verdict(walk)) + "</td></tr>\n";
    }
    return out + "</tbody>\n</table>\n";
}

std::string falls_table(const Site& site, const LightResult& light) {
    if (light.falls.empty()) return "";
    std::string out = "<table>\n<caption>Falls: light on the upright face</caption>\n" +
                      head_cells({"Falls", "Mean", "Darkest", "Brightest", "20 lx or more"}) + "<tbody>\n";
    for (const FallsLight& falls : light.falls) {
        out += fmt::format("<tr data-part=\"{0}\"><th scope=\"row\">{0}</th>",
                           html_text(site.falls[falls.falls].id));
        out += number_cell(lux_text(falls.mean)) + number_cell(lux_text(falls.minimum)) +
               number_cell(lux_text(falls.maximum)) + number_cell(percent_text(falls.lit_share));
        out += "<td>" + verdict_word(falls_verdict(falls)) + "</td></tr>\n";
    }
    return out + "</tbody>\n</table>\n";
}

std::string sightline_words(const Site& site, const Sightline& line) {
    const std::string name = html_text(site.falls[line.falls].id);
    if (!line.visible) return fmt::format("{} is hidden by {}", name, html_text(line.blocked_by));
    if (line.from_behind) return name + " is seen from behind";
    return line.seen_share < 1 ? fmt::format("{} of {} is seen", percent_text(line.seen_share), name)
                               : name + " is seen";
}

std::string views_list(const Site& site, const LightResult& light) {
    if (light.viewpoints.empty()) return "";
    std::string out = "<h3>Views</h3>\n<ul class=\"plain\">\n";
    for (const ViewpointLight& view : light.viewpoints) {
        std::string words;
        for (const Sightline& line : view.sees)
            words += sightline_words(site, line) + "; ";
        for (const Glare& glare : view.glare)
            words += fmt::format("{} shines into the eye{}; ", html_text(site.fixtures[glare.fixture].id),
                                 glare.mirrored ? " by way of the water" : "");
        if (view.glare.empty()) words += "no glare; ";
        words.resize(words.size() - 2);
        out += fmt::format("<li><b>{}</b>: {}.</li>\n", html_text(site.viewpoints[view.viewpoint].id), words);
    }
    return out + "</ul>\n";
}

} // namespace

std::string light_section(const Assessment& assessment) {
    if (!assessment.light) return "";
    const Site& site = *assessment.site;
    const LightResult& light = *assessment.light;
    if (light.walks.empty() && light.falls.empty() && light.fixtures.empty()) return "";
    std::string out =
        "<section id=\"light\" aria-labelledby=\"light-heading\">\n<h2 id=\"light-heading\">Light</h2>\n";
    const std::string picture = light_plan_svg(assessment);
    if (!picture.empty())
        out +=
            "<figure class=\"drawing\" tabindex=\"0\" role=\"group\" aria-label=\"Plan with isolux lines\">" +
            picture +
            "</figure>\n<p class=\"small soft\">Lines of equal light on the ground, values in lux. Full "
            "moonlight is "
            "about 0.25 lx.</p>\n";
    out += walks_table(site, light) + falls_table(site, light) + views_list(site, light);
    for (const std::string& sentence : light_method(site, light))
        out += "<p class=\"small soft\">" + html_text(sentence) + "</p>\n";
    return out + "</section>\n";
}

} // namespace rillwatt
