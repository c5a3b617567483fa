#include <fmt/format.h>

#include "plan_drawing.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

bool inside(const std::vector<SheetPoint>& outline, SheetPoint p) {
    bool odd = false;
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
        const SheetPoint a = outline[j];
        const SheetPoint b = outline[i];
        if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) odd = !odd;
    }
    return odd;
}

/// Places inside an outline for its name, the middle first.
std::vector<LabelPlace> places_inside(const std::vector<SheetPoint>& outline, double width, double height) {
    const auto [left, right] = std::minmax_element(outline.begin(), outline.end(),
                                                   [](SheetPoint a, SheetPoint b) { return a.x < b.x; });
    const auto [top, bottom] = std::minmax_element(outline.begin(), outline.end(),
                                                   [](SheetPoint a, SheetPoint b) { return a.y < b.y; });
    const SheetPoint middle{(left->x + right->x) / 2, (top->y + bottom->y) / 2};
    const double size = std::max(right->x - left->x, bottom->y - top->y);
    std::vector<LabelPlace> places;
    constexpr int steps = 18;
    for (int i = 1; i < steps; ++i) {
        for (int k = 1; k < steps; ++k) {
            const SheetPoint centre{left->x + (right->x - left->x) * i / steps,
                                    top->y + (bottom->y - top->y) * k / steps};
            const SheetBox box = box_around(centre, width, height);
            const int corners_out =
                !inside(outline, {box.x, box.y}) + !inside(outline, {box.right(), box.y}) +
                !inside(outline, {box.x, box.bottom()}) + !inside(outline, {box.right(), box.bottom()});
            if (!inside(outline, centre)) continue;
            const double off = std::hypot(centre.x - middle.x, centre.y - middle.y) / (size + 1);
            places.push_back({box, off * 2 + corners_out * 3, {}});
        }
    }
    return places;
}

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

std::string path_along(const std::vector<SheetPoint>& points, const std::string& classes, double width = 0) {
    const std::string style = width > 0 ? fmt::format(" style=\"stroke-width:{}px\"", coordinate(width)) : "";
    return fmt::format("<polyline class=\"{}\" points=\"{}\"{}/>", classes, points_text(points), style);
}

/// Points of a straight line that its label may stand round.
std::vector<LabelAnchor> anchors_on(SheetPoint a, SheetPoint b, std::initializer_list<double> shares,
                                    double radius) {
    std::vector<LabelAnchor> anchors;
    for (const double share : shares)
        anchors.push_back({point_between(a, b, share), radius});
    return anchors;
}

void draw_walk(PlanDrawing& plan, const Walk& walk) {
    const std::vector<SheetPoint> line = plan.sheet.at(walk.line);
    const double width = walk.width.value() * plan.sheet.pixels_per_metre;
    plan.walks += fmt::format("<g class=\"rw-part rw-walk-part\"{}>{}", part_attribute(walk.id),
                              svg_title(fmt::format("{}: walk, {} wide", walk.id, plan.length(walk.width))));
    plan.walks += path_along(line, "rw-walk-edge", width + 2) + path_along(line, "rw-walk-bed", width) +
                  path_along(line, "rw-walk-middle") + "</g>\n";
    const LabelText text{
        .part = walk.id, .name = walk.id, .figure = {}, .size = 10.5, .classes = "rw-faint", .group = {}};
    LabelRequest request;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        for (const double share : {0.5, 0.3, 0.7}) {
            const SheetPoint on = point_between(line[i], line[i + 1], share);
            request.places.push_back({box_around(on, text.width(), text.height()), 0.8, {}});
            request.anchors.push_back({on, 3});
        }
    }
    plan.add_label(text, std::move(request));
}

void draw_falls(PlanDrawing& plan, const Falls& falls) {
    const SheetPoint a = plan.sheet.at(falls.lip_left);
    const SheetPoint b = plan.sheet.at(falls.lip_right);
    const double length = std::hypot(b.x - a.x, b.y - a.y);
    const double x = std::cos(falls.faces.radians());
    const double y = -std::sin(falls.faces.radians());
    std::string comb;
    const int teeth = std::max(2, static_cast<int>(length / 6));
    for (int i = 0; i <= teeth; ++i) {
        const SheetPoint on = point_between(a, b, static_cast<double>(i) / teeth);
        const double tooth = i % 2 == 0 ? 9 : 6;
        comb += fmt::format("M{} {}l{} {}", coordinate(on.x), coordinate(on.y), coordinate(tooth * x),
                            coordinate(tooth * y));
    }
    plan.ground +=
        fmt::format("<g class=\"rw-part rw-falls-part\"{}>{}<path class=\"rw-falls-comb\" d=\"{}\"/>{}</g>\n",
                    part_attribute(falls.id),
                    svg_title(fmt::format("{}: falls, drop {}", falls.id, plan.length(falls.drop))), comb,
                    path_along({a, b}, "rw-falls"));
    const LabelText text{.part = falls.id,
                         .name = falls.id,
                         .figure = "drop " + plan.length(falls.drop),
                         .size = 10.5,
                         .classes = {},
                         .group = {}};
    plan.label_ground.lines.emplace_back(a, b);
    plan.label_ground.lines.emplace_back(a, b);
    plan.add_label(text, {.anchors = anchors_on(a, b, {0.5, 0.15, 0.85}, 4)});
}

void draw_sleeve(PlanDrawing& plan, const Sleeve& sleeve) {
    const SheetPoint a = plan.sheet.at(sleeve.a);
    const SheetPoint b = plan.sheet.at(sleeve.b);
    const double length = std::max(std::hypot(b.x - a.x, b.y - a.y), 0.1);
    const double x = -(b.y - a.y) / length * 5;
    const double y = (b.x - a.x) / length * 5;
    std::string d;
    for (const double side : {-1.0, 1.0})
        d += fmt::format("M{} {}L{} {}", coordinate(a.x + side * x), coordinate(a.y + side * y),
                         coordinate(b.x + side * x), coordinate(b.y + side * y));
    std::string ends;
    for (const SheetPoint p : {a, b})
        ends += fmt::format("M{} {}l{} {}", coordinate(p.x - x), coordinate(p.y - y), coordinate(2 * x),
                            coordinate(2 * y));
    plan.ground += fmt::format(
        "<g class=\"rw-part rw-sleeve-part\"{}>{}<path class=\"rw-sleeve\" d=\"{}\"/>"
        "<path class=\"rw-line\" d=\"{}\"/></g>\n",
        part_attribute(sleeve.id),
        svg_title(fmt::format("{}: sleeve, {} long", sleeve.id, plan.length(distance(sleeve.a, sleeve.b)))),
        d, ends);
    const LabelText text{
        .part = sleeve.id, .name = sleeve.id, .figure = {}, .size = 10, .classes = "rw-faint", .group = {}};
    plan.add_label(text, {.anchors = anchors_on(a, b, {0.5, 0.25, 0.75, 0.1, 0.9}, 6)});
}

} // namespace

std::vector<const Area*> areas_from_below(const Site& site) {
    std::vector<const Area*> order;
    for (const Area& area : site.areas)
        if (area.outline.size() >= 3) order.push_back(&area);
    std::stable_sort(order.begin(), order.end(),
                     [](const Area* a, const Area* b) { return layer(a->kind) < layer(b->kind); });
    return order;
}

void draw_areas(PlanDrawing& plan) {
    for (const Area* area : areas_from_below(plan.site)) {
        const std::vector<SheetPoint> outline = plan.sheet.at(area->outline);
        const std::string kind = area_class(area->kind);
        const std::string points = points_text(outline);
        plan.areas += fmt::format(
            "<g class=\"rw-part rw-area\"{}>{}<polygon class=\"rw-{}\" points=\"{}\"/>"
            "<polygon class=\"rw-hatch\" fill=\"url(#rw-hatch-{})\" points=\"{}\"/></g>\n",
            part_attribute(area->id), svg_title(area->id + ": " + kind), kind, points, kind, points);
        const LabelText text{.part = area->id,
                             .name = area->id,
                             .figure = {},
                             .size = 12.5,
                             .classes = "rw-area-name",
                             .group = {}};
        plan.add_label(text, {.places = places_inside(outline, text.width() + 4, text.height())});
    }
}

void draw_ground(PlanDrawing& plan) {
    for (const Walk& walk : plan.site.walks)
        if (walk.line.size() >= 2) draw_walk(plan, walk);
    for (const Falls& falls : plan.site.falls)
        draw_falls(plan, falls);
    for (const Sleeve& sleeve : plan.site.sleeves)
        draw_sleeve(plan, sleeve);
}

} // namespace rillwatt
