#include "rillwatt/drawing/light_plan.hpp"

#include <fmt/format.h>

#include "drawing_style.hpp"
#include "ground_shapes.hpp"
#include "isolux_values.hpp"
#include "pointing.hpp"
#include "shape_markup.hpp"
#include <algorithm>
#include <set>

namespace rillwatt {

namespace {

constexpr double widest = 1000;
constexpr double highest = 900;
constexpr double text_size = 11;
constexpr std::string_view drawing_name = "light";

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

/// There is no light in a building; the map is too coarse to end at its walls, so the walls end it.
std::vector<Shape> areas(const PlanSheet& sheet, const Site& site, bool buildings) {
    std::vector<Shape> shapes;
    for (const Area* area : areas_from_below(site))
        if ((area->kind == AreaKind::building) == buildings) shapes.push_back(area_shape(sheet, *area));
    return shapes;
}

std::vector<Shape> falls(const PlanSheet& sheet, const Site& site) {
    std::vector<Shape> shapes;
    for (const Falls& falls : site.falls)
        shapes.push_back(falls_shape(sheet, falls, falls.id));
    return shapes;
}

/// Lights and viewpoints.
std::vector<Shape> symbols(const PlanSheet& sheet, const Assessment& assessment) {
    const Site& site = *assessment.site;
    std::vector<Shape> shapes;
    const auto add = [&](const std::string& id, const char* look, PlanPoint at, const Symbol& symbol) {
        shapes.push_back(
            {.part = id, .look = look, .title = id, .lines = {}, .symbol = symbol, .at = sheet.at(at)});
    };
    for (const FixtureLight& light : assessment.light->fixtures) {
        const Fixture& fixture = site.fixtures[light.fixture];
        const FixtureType* type = find_entry(assessment.catalog->fixtures, fixture.model);
        add(fixture.id, "rw-part rw-light", on_plan(light.at),
            {.kind = symbol_of(type), .pointing = pointing_degrees(fixture), .dark = light.dark});
    }
    for (const Viewpoint& viewpoint : site.viewpoints)
        add(viewpoint.id, "rw-part rw-viewpoint", viewpoint.at,
            {.kind = SymbolKind::viewpoint, .pointing = looking_degrees(site, viewpoint)});
    return shapes;
}

/// What the values keep clear of.
LabelGround ground_of_values(const PlanSheet& sheet, const Site& site, const std::vector<Shape>& symbols) {
    constexpr double symbol_size = 18;
    LabelGround ground{sheet.frame, {}, {}};
    for (const Shape& symbol : symbols)
        ground.symbols.push_back(box_around(symbol.at, symbol_size, symbol_size));
    for (const Falls& falls : site.falls)
        ground.lines.emplace_back(sheet.at(falls.lip_left), sheet.at(falls.lip_right));
    return ground;
}

std::string values(const std::vector<DrawnIsolux>& lines, const LabelGround& ground) {
    std::vector<IsoluxValue> wanted = isolux_values(lines, text_size);
    std::vector<LabelRequest> requests;
    for (IsoluxValue& value : wanted)
        requests.push_back({.places = std::move(value.places), .optional = true});
    const std::vector<std::optional<LabelPlace>> places = place_labels(ground, requests);
    std::string out;
    for (std::size_t i = 0; i < places.size(); ++i)
        if (places[i])
            out += svg_text({places[i]->box.centre().x, places[i]->box.bottom() - text_size * 0.28},
                            wanted[i].words, text_size, "rw-halo rw-lux", Anchor::middle) +
                   "\n";
    return out;
}

void add_ground_legend(LegendFlow& legend, const Site& site) {
    if (!site.walks.empty())
        legend.add("<path class=\"rw-walk-lit\" stroke-width=\"1.2\" d=\"M0-4.5H24M0 4.5H24\"/>", 24, "walk");
    if (!site.falls.empty()) legend.add("<path class=\"rw-falls\" d=\"M0 0H24\"/>", 24, "falls");
    for (const AreaKind kind :
         {AreaKind::water, AreaKind::building, AreaKind::paving, AreaKind::bed, AreaKind::lawn})
        if (std::any_of(site.areas.begin(), site.areas.end(), [&](const Area& a) { return a.kind == kind; }))
            legend.add(fmt::format("<rect class=\"rw-{1}\" y=\"-5\" width=\"24\" height=\"10\"/>"
                                   "<rect class=\"rw-hatch\" fill=\"url(#rw-{0}-hatch-{1})\" y=\"-5\" "
                                   "width=\"24\" height=\"10\"/>",
                                   drawing_name, area_class(kind)),
                       24, area_class(kind));
}

void add_symbol_legend(LegendFlow& legend, const std::vector<Shape>& symbols) {
    constexpr double room = 20;
    std::set<std::pair<SymbolKind, bool>> used;
    for (const Shape& shape : symbols)
        used.emplace(shape.symbol->kind, shape.symbol->dark);
    const auto add = [&](SymbolKind kind, bool dark, std::string_view words) {
        legend.add("<g transform=\"translate(10 0)\">" +
                       symbol_markup({.kind = kind, .pointing = 0, .dark = dark}) + "</g>",
                   room, words);
    };
    for (const SymbolKind kind : light_symbols)
        if (used.count({kind, false}) > 0) add(kind, false, symbol_words(kind));
    if (std::any_of(used.begin(), used.end(), [](const auto& symbol) { return symbol.second; }))
        add(SymbolKind::other_light, true, "light that gives none");
    if (used.count({SymbolKind::viewpoint, false}) > 0)
        add(SymbolKind::viewpoint, false, symbol_words(SymbolKind::viewpoint));
}

/// Names all that is on the picture, below it.
LegendFlow legend(const PlanSheet& sheet, const Assessment& assessment, const std::vector<Shape>& symbols) {
    constexpr double margin = 12;
    LegendFlow out(margin, sheet.frame.bottom() + margin, sheet.width - 2 * margin, text_size);
    add_isolux_legend(out, *assessment.light->map);
    add_ground_legend(out, *assessment.site);
    add_symbol_legend(out, symbols);
    return out;
}

std::string opening(const PlanSheet& sheet, double height) {
    return fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"rw-drawing rw-light-plan\" "
                       "role=\"img\" aria-label=\"Plan with isolux lines\" viewBox=\"0 0 {0} {1}\" "
                       "width=\"{0}\" height=\"{1}\" data-drawing=\"light\" {2}>\n{3}\n"
                       "<defs>{4}<clipPath id=\"rw-light-frame\"><rect width=\"{0}\" height=\"{5}\"/>"
                       "</clipPath></defs>\n<rect class=\"rw-paper\" width=\"{0}\" height=\"{1}\"/>\n",
                       coordinate(sheet.width), coordinate(height), scale_attributes(sheet), drawing_style(),
                       area_patterns(drawing_name), coordinate(sheet.frame.height));
}

} // namespace

std::string light_plan_svg(const Assessment& assessment) {
    if (!assessment.light || !assessment.light->map || assessment.light->map->lux.empty()) return "";
    const Site& site = *assessment.site;
    const PlanSheet sheet = sheet_of(*assessment.light->map);
    const std::vector<DrawnIsolux> lines = drawn_isolux(*assessment.light->map, sheet);
    const std::vector<Shape> marks = symbols(sheet, assessment);
    const LegendFlow key = legend(sheet, assessment, marks);
    const auto markup = [](const std::vector<Shape>& shapes) { return shapes_markup(shapes, drawing_name); };
    return opening(sheet, key.bottom() + 8) + "<g class=\"rw-lit\" clip-path=\"url(#rw-light-frame)\">\n" +
           markup(areas(sheet, site, false)) + isolux_bands(lines) +
           ground_outlines(sheet, site, drawing_name) + isolux_contours(lines) +
           markup(areas(sheet, site, true)) + markup(falls(sheet, site)) + markup(marks) +
           values(lines, ground_of_values(sheet, site, marks)) +
           fmt::format("</g>\n<path class=\"rw-rule\" d=\"M0 {}H{}\"/>\n", coordinate(sheet.frame.bottom()),
                       coordinate(sheet.width)) +
           key.text() + "</svg>\n";
}

} // namespace rillwatt
