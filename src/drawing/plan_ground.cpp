#include <fmt/format.h>

#include "ground_shapes.hpp"
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

/// Points of a straight line that its label may stand round.
std::vector<LabelAnchor> anchors_on(SheetPoint a, SheetPoint b, std::initializer_list<double> shares,
                                    double radius) {
    std::vector<LabelAnchor> anchors;
    for (const double share : shares)
        anchors.push_back({point_between(a, b, share), radius});
    return anchors;
}

/// A winding walk is named along some of its pieces.
constexpr std::size_t most_pieces_with_places = 30;

void draw_walk(PlanDrawing& plan, const Walk& walk) {
    plan.walks.push_back(
        walk_shape(plan.sheet, walk, fmt::format("{}: walk, {} wide", walk.id, plan.length(walk.width))));
    const std::vector<SheetPoint> line = plan.sheet.at(walk.line);
    const LabelText text{
        .part = walk.id, .name = walk.id, .figure = {}, .size = 10.5, .classes = "rw-faint", .group = {}};
    LabelRequest request;
    const std::size_t step = line.size() / most_pieces_with_places + 1;
    for (std::size_t i = 0; i + 1 < line.size(); i += step) {
        for (const double share : {0.5, 0.3, 0.7}) {
            const SheetPoint on = point_between(line[i], line[i + 1], share);
            request.places.push_back({box_around(on, text.width(), text.height()), 0.8, {}});
            request.anchors.push_back({on, 3});
        }
    }
    plan.add_label(text, std::move(request));
}

void draw_falls(PlanDrawing& plan, const Falls& falls) {
    plan.ground.push_back(
        falls_shape(plan.sheet, falls, fmt::format("{}: falls, drop {}", falls.id, plan.length(falls.drop))));
    const SheetPoint a = plan.sheet.at(falls.lip_left);
    const SheetPoint b = plan.sheet.at(falls.lip_right);
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
    plan.ground.push_back(sleeve_shape(
        plan.sheet, sleeve,
        fmt::format("{}: sleeve, {} long", sleeve.id, plan.length(distance(sleeve.a, sleeve.b)))));
    const SheetPoint a = plan.sheet.at(sleeve.a);
    const SheetPoint b = plan.sheet.at(sleeve.b);
    const LabelText text{
        .part = sleeve.id, .name = sleeve.id, .figure = {}, .size = 10, .classes = "rw-faint", .group = {}};
    plan.add_label(text, {.anchors = anchors_on(a, b, {0.5, 0.25, 0.75, 0.1, 0.9}, 6)});
}

} // namespace

void draw_areas(PlanDrawing& plan) {
    for (const Area* area : areas_from_below(plan.site)) {
        plan.areas.push_back(area_shape(plan.sheet, *area));
        const std::vector<SheetPoint> outline = plan.sheet.at(area->outline);
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
