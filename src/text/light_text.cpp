#include "rillwatt/text/light_text.hpp"

#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/text/cautions.hpp"
#include "rillwatt/text/check_text.hpp"
#include "rillwatt/text/utf8.hpp"

#include <fmt/format.h>

namespace rillwatt {

namespace {

constexpr std::size_t name_columns = 18;
constexpr std::size_t figure_columns = 10;

std::string name_cell(const std::string& id) {
    return "  " + padded_right(clipped(printable(id), name_columns), name_columns);
}

std::string lux_cell(Lux lux) { return padded_left(lux_text(lux), figure_columns); }

std::string verdict_cell(const TextStyle& style, const std::string& verdict) {
    const bool good = verdict == "enough" || verdict == "lit";
    return inked(style, good ? Ink::good : Ink::warning, verdict);
}

std::string heading(const TextStyle& style, const char* name, const char* remark,
                    const std::string& columns) {
    return '\n' + inked(style, Ink::heading, name) + "  " + remark + '\n' +
           inked(style, Ink::faint, columns) + '\n';
}

/// What is said of a walk or falls too large for the usual cells; empty for any other.
std::string coarse_text(const Site& site, bool coarse, Metres cell, const TextStyle& style) {
    if (!coarse) return "";
    return wrapped(fmt::format("so large that it is computed in cells of {} only; darker and brighter spots "
                               "smaller than that are missed",
                               decimal_length_text(cell, site.settings.units)),
                   style.width, "    ", "    ");
}

std::string walks_text(const Site& site, const LightResult& light, const TextStyle& style) {
    if (light.walks.empty()) return "";
    std::string out = heading(style, "WALKS", "level light on the ground",
                              "  walk                    mean   darkest brightest  min/mean  verdict");
    for (const WalkLight& walk : light.walks) {
        const Walk& written = site.walks[walk.walk];
        out += name_cell(written.id) + lux_cell(walk.mean) + lux_cell(walk.minimum) + lux_cell(walk.maximum) +
               padded_left(fixed_text(walk.uniformity, 2), figure_columns) + "  " +
               verdict_cell(style, walk_verdict(walk)) + '\n';
        if (walk.target_mean || walk.target_minimum)
            out += wrapped(fmt::format("{}; darkest at {}", printable(walk_target_text(written, walk)),
                                       plan_point_text(on_plan(walk.darkest), site.settings.units)),
                           style.width, "    asks ", "    ");
        out += coarse_text(site, walk.coarse, walk.cell, style);
    }
    return out;
}

std::string falls_text(const Site& site, const LightResult& light, const TextStyle& style) {
    if (light.falls.empty()) return "";
    std::string out = heading(style, "FALLS", "light on the upright face",
                              "  falls                   mean   darkest brightest       lit  verdict");
    for (const FallsLight& falls : light.falls) {
        out += name_cell(site.falls[falls.falls].id) + lux_cell(falls.mean) + lux_cell(falls.minimum) +
               lux_cell(falls.maximum) +
               padded_left(fixed_text(100 * falls.lit_share, 0) + " %", figure_columns) + "  " +
               verdict_cell(style, falls_verdict(falls)) + '\n';
        out += coarse_text(site, falls.coarse, falls.cell, style);
    }
    return out;
}

std::string points_text(const Site& site, const LightResult& light, const TextStyle& style) {
    if (light.points.empty()) return "";
    std::string out = '\n' + inked(style, Ink::heading, "POINTS") + "  level light\n";
    for (const PointLight& point : light.points)
        out += fmt::format("  {}, {} up: {}\n", plan_point_text(on_plan(point.point), site.settings.units),
                           decimal_length_text(Metres(point.point.z), site.settings.units, 2),
                           lux_text(point.horizontal));
    return out;
}

std::string sightline_words(const Site& site, const Sightline& line) {
    std::string words = printable(site.falls[line.falls].id);
    if (!line.visible)
        words += fmt::format(" is hidden by {}", printable(line.blocked_by));
    else if (line.from_behind)
        words += " is seen from behind";
    else if (line.seen_share < 1)
        words += fmt::format(" is seen, {} of it", percent_text(line.seen_share));
    else
        words += " is seen";
    return words;
}

std::string glare_words(const Site& site, const Glare& glare) {
    return fmt::format("{} shines into the eye{}, {} degrees off its axis",
                       printable(site.fixtures[glare.fixture].id),
                       glare.mirrored ? " by way of the water" : "", fixed_text(glare.angle.value(), 0));
}

std::string viewpoints_text(const Site& site, const LightResult& light, const TextStyle& style) {
    if (light.viewpoints.empty()) return "";
    std::string out = '\n' + inked(style, Ink::heading, "VIEWS") + '\n';
    for (const ViewpointLight& viewpoint : light.viewpoints) {
        std::string words;
        for (const Sightline& line : viewpoint.sees)
            words += (words.empty() ? "" : "; ") + sightline_words(site, line);
        for (const Glare& glare : viewpoint.glare)
            words += (words.empty() ? "" : "; ") + glare_words(site, glare);
        if (viewpoint.glare.empty()) words += words.empty() ? "no glare" : "; no glare";
        out += wrapped(printable(site.viewpoints[viewpoint.viewpoint].id) + ": " + words, style.width, "  ",
                       "    ");
    }
    return out;
}

std::string head_text(const Site& site, const LightResult& light, const TextStyle& style) {
    std::string out =
        inked(style, Ink::heading, printable(site.settings.name)) + "  " + printable(site.file) + '\n';
    for (const std::string& sentence : light_method(site, light))
        out += wrapped(sentence, style.width, "", "");
    if (light.fixtures.empty()) out += "No light is on the plan yet; `rillwatt place` proposes some.\n";
    return out;
}

} // namespace

std::string light_text(const Assessment& assessment, const TextStyle& style) {
    const Site& site = *assessment.site;
    const LightResult& light = *assessment.light;
    std::string out = head_text(site, light, style);
    out += walks_text(site, light, style) + falls_text(site, light, style) + points_text(site, light, style) +
           viewpoints_text(site, light, style);
    out += '\n' + findings_text(light_findings(assessment.findings), style) + '\n' +
           inked(style, Ink::heading, "CAUTIONS") + '\n';
    for (std::string_view sentence : cautions())
        out += wrapped(sentence, style.width, "  ", "  ");
    return out;
}

} // namespace rillwatt
