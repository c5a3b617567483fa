#include "ground_shapes.hpp"

#include <fmt/format.h>

#include "drawing_style.hpp"
#include "walk_outlines.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

int layer(AreaKind kind) {
    switch (kind) {
    case AreaKind::lawn:
        return 0;
    case AreaKind::bed:
        return 1;
    case AreaKind::paving:
        return 2;
    case AreaKind::building:
        return 3;
    case AreaKind::water:
        return 4;
    }
    return 0;
}

SheetPoint moved(SheetPoint p, double x, double y) { return {p.x + x, p.y + y}; }

} // namespace

std::vector<const Area*> areas_from_below(const Site& site) {
    std::vector<const Area*> order;
    for (const Area& area : site.areas)
        if (area.outline.size() >= 3) order.push_back(&area);
    std::stable_sort(order.begin(), order.end(),
                     [](const Area* a, const Area* b) { return layer(a->kind) < layer(b->kind); });
    return order;
}

Shape area_shape(const PlanSheet& sheet, const Area& area) {
    const std::string kind = area_class(area.kind);
    const std::vector<SheetPoint> outline = sheet.at(area.outline);
    Shape shape{.part = area.id,
                .look = "rw-part rw-area",
                .title = area.id + ": " + kind,
                .lines = {},
                .symbol = {},
                .at = {}};
    shape.lines.push_back({.look = "rw-" + kind, .points = outline, .form = LineForm::closed});
    shape.lines.push_back(
        {.look = "rw-hatch", .points = outline, .form = LineForm::closed, .pattern = "hatch-" + kind});
    return shape;
}

Shape walk_shape(const PlanSheet& sheet, const Walk& walk, std::string title) {
    const std::vector<SheetPoint> line = sheet.at(walk.line);
    const double width = walk.width.value() * sheet.pixels_per_metre;
    return {.part = walk.id,
            .look = "rw-part rw-walk-part",
            .title = std::move(title),
            .lines = {{.look = "rw-walk-edge", .points = line, .width = width + 2},
                      {.look = "rw-walk-bed", .points = line, .width = width},
                      {.look = "rw-walk-middle", .points = line}},
            .symbol = {},
            .at = {}};
}

Shape falls_shape(const PlanSheet& sheet, const Falls& falls, std::string title) {
    const SheetPoint a = sheet.at(falls.lip_left);
    const SheetPoint b = sheet.at(falls.lip_right);
    const double x = std::cos(falls.faces.radians());
    const double y = -std::sin(falls.faces.radians());
    const int teeth = std::max(2, static_cast<int>(std::hypot(b.x - a.x, b.y - a.y) / 6));
    Line comb{.look = "rw-falls-comb", .form = LineForm::strokes};
    for (int i = 0; i <= teeth; ++i) {
        const SheetPoint on = point_between(a, b, static_cast<double>(i) / teeth);
        const double tooth = i % 2 == 0 ? 9 : 6;
        comb.points.push_back(on);
        comb.points.push_back(moved(on, tooth * x, tooth * y));
    }
    return {.part = falls.id,
            .look = "rw-part rw-falls-part",
            .title = std::move(title),
            .lines = {std::move(comb), {.look = "rw-falls", .points = {a, b}}},
            .symbol = {},
            .at = {}};
}

Shape sleeve_shape(const PlanSheet& sheet, const Sleeve& sleeve, std::string title) {
    constexpr double half_width = 5;
    const SheetPoint a = sheet.at(sleeve.a);
    const SheetPoint b = sheet.at(sleeve.b);
    const double length = std::max(std::hypot(b.x - a.x, b.y - a.y), 0.1);
    const double x = -(b.y - a.y) / length * half_width;
    const double y = (b.x - a.x) / length * half_width;
    const SheetPoint a1 = moved(a, -x, -y);
    const SheetPoint a2 = moved(a, x, y);
    const SheetPoint b1 = moved(b, -x, -y);
    const SheetPoint b2 = moved(b, x, y);
    return {.part = sleeve.id,
            .look = "rw-part rw-sleeve-part",
            .title = std::move(title),
            .lines = {{.look = "rw-sleeve", .points = {a1, b1, a2, b2}, .form = LineForm::strokes},
                      {.look = "rw-line", .points = {a1, a2, b1, b2}, .form = LineForm::strokes}},
            .symbol = {},
            .at = {}};
}

std::string ground_outlines(const PlanSheet& sheet, const Site& site, std::string_view drawing) {
    std::string edges;
    std::string water;
    for (const Area* area : areas_from_below(site)) {
        const std::string points = points_text(sheet.at(area->outline));
        edges += fmt::format("<polygon class=\"rw-{}\" points=\"{}\"/>\n", area_class(area->kind), points);
        if (area->kind == AreaKind::water)
            water +=
                fmt::format("<polygon class=\"rw-hatch\" fill=\"url(#rw-{}-hatch-water)\" points=\"{}\"/>\n",
                            drawing, points);
    }
    std::vector<DrawnWalk> walks;
    for (const Walk& walk : site.walks)
        if (walk.line.size() >= 2)
            walks.push_back({sheet.at(walk.line), walk.width.value() * sheet.pixels_per_metre});
    return "<g class=\"rw-outline\" pointer-events=\"none\">\n" + edges +
           "</g>\n<g pointer-events=\"none\">\n" + water + "</g>\n" +
           walk_outlines(walks, sheet.frame, fmt::format("rw-{}-walks", drawing));
}

} // namespace rillwatt
