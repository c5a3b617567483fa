#include "rillwatt/drawing/light_plan.hpp"

#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include "drawing_style.hpp"
#include "isolux_values.hpp"
#include "walk_outlines.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

constexpr double widest = 1000;
constexpr double highest = 900;
constexpr double text_size = 11;
constexpr double light_radius = 4.5;
constexpr const char* paper = "#fbfaf5";
constexpr const char* edge_of_water = "#2f7ea8";
constexpr const char* edge_of_walk = "fill=\"none\" stroke=\"#4a4a44\" stroke-linejoin=\"round\"";

/// The map to scale, as large as it fits.
PlanSheet sheet_of(const LuxMap& map) {
    const double across = map.step * static_cast<double>(map.columns - 1);
    const double up = map.step * static_cast<double>(map.rows - 1);
    PlanSheet sheet;
    sheet.low = map.corner;
    sheet.high = {map.corner.x + across, map.corner.y + up};
    sheet.pixels_per_metre = std::min(widest / across, highest / up);
    sheet.frame = {0, 0, across * sheet.pixels_per_metre, up * sheet.pixels_per_metre};
    sheet.width = sheet.frame.width;
    return sheet;
}

const char* fill_of(AreaKind kind) {
    switch (kind) {
    case AreaKind::water:
        return "#cfe3ef";
    case AreaKind::building:
        return "#d9d4c8";
    case AreaKind::paving:
        return "#ece8dd";
    case AreaKind::bed:
        return "#e3ebd9";
    case AreaKind::lawn:
        break;
    }
    return "#eef4e6";
}

const char* edge_of(AreaKind kind) {
    return kind == AreaKind::building ? "stroke=\"#8b8778\"" : "stroke=\"#8b8778\" stroke-dasharray=\"5 3\"";
}

std::string drawn_area(const PlanSheet& sheet, const Area& area, std::string_view fill,
                       std::string_view rest) {
    return fmt::format("<polygon points=\"{}\" fill=\"{}\" {}><title>{}</title></polygon>\n",
                       points_text(sheet.at(area.outline)), fill, rest, html_text(area.id));
}

std::string grounds(const PlanSheet& sheet, const Site& site) {
    std::string out;
    for (const Area& a : site.areas)
        if (a.kind != AreaKind::building) out += drawn_area(sheet, a, fill_of(a.kind), "");
    return out;
}

/// What the light would hide: edges of areas, waves on water, edges of walks.
std::string outlines(const PlanSheet& sheet, const Site& site) {
    std::string out =
        fmt::format("<pattern id=\"rw-light-waves\" width=\"26\" height=\"12\" "
                    "patternUnits=\"userSpaceOnUse\"><path d=\"M1 3q3-2.4 6 0t6 0M14 9q3-2.4 6 0t5 .4\" "
                    "fill=\"none\" stroke=\"{}\" stroke-width=\"0.9\"/></pattern>\n",
                    edge_of_water);
    for (const Area& a : site.areas) {
        if (a.kind == AreaKind::building) continue;
        if (a.kind == AreaKind::water)
            out += drawn_area(
                sheet, a, "url(#rw-light-waves)",
                fmt::format("stroke=\"{}\" stroke-width=\"1.6\" pointer-events=\"none\"", edge_of_water));
        else
            out += drawn_area(sheet, a, "none", edge_of(a.kind));
    }
    std::vector<DrawnWalk> walks;
    for (const Walk& walk : site.walks)
        walks.push_back({sheet.at(walk.line), walk.width.value() * sheet.pixels_per_metre});
    return out + walk_outlines(walks, sheet.frame, "rw-light-walks", edge_of_walk);
}

/// There is no light in a building; the map is too coarse to end at its walls, so the walls end it.
std::string buildings(const PlanSheet& sheet, const Site& site) {
    std::string out;
    for (const Area& a : site.areas)
        if (a.kind == AreaKind::building) out += drawn_area(sheet, a, fill_of(a.kind), edge_of(a.kind));
    return out;
}

std::string falls(const PlanSheet& sheet, const Site& site) {
    std::string out;
    for (const Falls& f : site.falls)
        out += fmt::format("<polyline points=\"{}\" fill=\"none\" stroke=\"#0d5a86\" stroke-width=\"4\">"
                           "<title>{}</title></polyline>\n",
                           points_text(sheet.at({f.lip_left, f.lip_right})), html_text(f.id));
    return out;
}

std::string light_symbol(SheetPoint at, bool dark) {
    return fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\" fill=\"{}\" stroke=\"#1b2733\" "
                       "stroke-width=\"1.2\"/>",
                       coordinate(at.x), coordinate(at.y), coordinate(light_radius),
                       dark ? "#777777" : "#ffffff");
}

std::string viewpoint_symbol(SheetPoint at) {
    return fmt::format("<circle cx=\"{0}\" cy=\"{1}\" r=\"6\" fill=\"none\" stroke=\"#0d5a86\" "
                       "stroke-width=\"1.6\"/><circle cx=\"{0}\" cy=\"{1}\" r=\"2\" fill=\"#0d5a86\"/>",
                       coordinate(at.x), coordinate(at.y));
}

/// Lights and viewpoints; the ground keeps their places free of values.
std::string symbols(const PlanSheet& sheet, const Site& site, const LightResult& light, LabelGround& ground) {
    std::string out;
    for (const FixtureLight& fixture : light.fixtures) {
        const SheetPoint at = sheet.at(on_plan(fixture.at));
        const std::string id = html_text(site.fixtures[fixture.fixture].id);
        out += fmt::format("<g data-part=\"{}\"><title>{}</title>{}</g>\n", id, id,
                           light_symbol(at, fixture.dark));
        ground.symbols.push_back(box_around(at, 2 * light_radius, 2 * light_radius));
    }
    for (const Viewpoint& viewpoint : site.viewpoints) {
        const SheetPoint at = sheet.at(viewpoint.at);
        out += fmt::format("<g><title>{}</title>{}</g>\n", html_text(viewpoint.id), viewpoint_symbol(at));
        ground.symbols.push_back(box_around(at, 14, 14));
    }
    return out;
}

std::string values(const std::vector<DrawnIsolux>& lines, const LabelGround& ground) {
    std::vector<IsoluxValue> wanted = isolux_values(lines, text_size);
    std::vector<LabelRequest> requests;
    for (IsoluxValue& value : wanted)
        requests.push_back({.places = std::move(value.places), .optional = true});
    const std::vector<std::optional<LabelPlace>> places = place_labels(ground, requests);
    std::string out = fmt::format("<g fill=\"#4a3000\" stroke=\"{}\" stroke-width=\"3\" "
                                  "stroke-linejoin=\"round\" paint-order=\"stroke\">\n",
                                  paper);
    for (std::size_t i = 0; i < places.size(); ++i)
        if (places[i])
            out += svg_text({places[i]->box.centre().x, places[i]->box.bottom() - text_size * 0.28},
                            wanted[i].words, text_size, "", Anchor::middle) +
                   "\n";
    return out + "</g>\n";
}

/// Names all that is on the picture, below it.
LegendFlow legend(const PlanSheet& sheet, const Site& site, const LightResult& light) {
    constexpr double margin = 12;
    LegendFlow out(margin, sheet.frame.bottom() + margin, sheet.width - 2 * margin, text_size);
    add_isolux_legend(out, *light.map);
    const auto shows = [&](AreaKind kind) {
        return std::any_of(site.areas.begin(), site.areas.end(),
                           [&](const Area& a) { return a.kind == kind; });
    };
    if (!site.walks.empty())
        out.add("<path d=\"M0-4.5H24M0 4.5H24\" stroke=\"#4a4a44\" stroke-width=\"1.2\"/>", 24, "walk");
    if (shows(AreaKind::water))
        out.add(fmt::format("<rect y=\"-5\" width=\"24\" height=\"10\" fill=\"url(#rw-light-waves)\" "
                            "stroke=\"{}\" stroke-width=\"1.6\"/>",
                            edge_of_water),
                24, "water");
    if (!site.falls.empty())
        out.add("<path d=\"M0 0H24\" stroke=\"#0d5a86\" stroke-width=\"4\"/>", 24, "falls");
    for (const AreaKind kind : {AreaKind::building, AreaKind::paving, AreaKind::bed, AreaKind::lawn})
        if (shows(kind))
            out.add(fmt::format("<rect y=\"-5\" width=\"24\" height=\"10\" fill=\"{}\" {}/>", fill_of(kind),
                                edge_of(kind)),
                    24, area_class(kind));
    for (const bool dark : {false, true})
        if (std::any_of(light.fixtures.begin(), light.fixtures.end(),
                        [&](const FixtureLight& fixture) { return fixture.dark == dark; }))
            out.add(light_symbol({6, 0}, dark), 12, dark ? "light that gives none" : "light");
    if (!site.viewpoints.empty()) out.add(viewpoint_symbol({8, 0}), 16, "viewpoint");
    return out;
}

} // namespace

std::string light_plan_svg(const Site& site, const LightResult& light) {
    if (!light.map || light.map->lux.empty()) return "";
    const PlanSheet sheet = sheet_of(*light.map);
    const std::vector<DrawnIsolux> lines = drawn_isolux(*light.map, sheet);
    const LegendFlow key = legend(sheet, site, light);
    const std::string width = coordinate(sheet.width);
    const std::string height = coordinate(key.bottom() + 8);
    LabelGround ground{sheet.frame, {}, {}};
    for (const Falls& f : site.falls)
        ground.lines.emplace_back(sheet.at(f.lip_left), sheet.at(f.lip_right));
    const std::string marks = symbols(sheet, site, light, ground);
    std::string out =
        fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0} {1}\" role=\"img\" "
                    "style=\"max-width:{0}px\" aria-label=\"Plan with isolux lines\" "
                    "font-family=\"sans-serif\">\n<rect width=\"{0}\" height=\"{1}\" fill=\"{2}\"/>\n",
                    width, height, paper);
    out += grounds(sheet, site) + isolux_bands(lines) + outlines(sheet, site) + isolux_contours(lines) +
           buildings(sheet, site) + falls(sheet, site) + marks + values(lines, ground);
    out += fmt::format("<rect y=\"{0}\" width=\"{1}\" height=\"{2}\" fill=\"{3}\"/>\n"
                       "<path d=\"M0 {0}H{1}\" stroke=\"#c9c4b4\"/>\n<g fill=\"#1b2733\">\n{4}</g>\n",
                       coordinate(sheet.frame.bottom()), width,
                       coordinate(key.bottom() + 10 - sheet.frame.bottom()), paper, key.text());
    return out + "</svg>\n";
}

} // namespace rillwatt
