#include <fmt/format.h>

#include "plan_drawing.hpp"
#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <tuple>

namespace rillwatt {
namespace {

/// A straight piece of trench, the same whichever way a cable goes through it, to the millimetre.
using LegKey = std::tuple<long, long, long, long>;

LegKey key_of(PlanPoint a, PlanPoint b) {
    const auto mm = [](double v) { return std::lround(v * 1000); };
    const std::pair p{mm(a.x), mm(a.y)};
    const std::pair q{mm(b.x), mm(b.y)};
    const auto& [low, high] = std::minmax(p, q);
    return {low.first, low.second, high.first, high.second};
}

std::vector<PlanPoint> course(const DrawnCable& cable) {
    if (cable.length && cable.length->route.size() >= 2) return cable.length->route;
    const bool typed = cable.length && cable.length->origin == LengthOrigin::typed;
    if (typed && cable.from_at && cable.to_at) return {*cable.from_at, *cable.to_at};
    return {};
}

/// Which cables lie side by side in each piece of trench.
class Lanes {
  public:
    void add(std::size_t cable, const std::vector<PlanPoint>& points) {
        for (std::size_t i = 0; i + 1 < points.size(); ++i)
            cables_[key_of(points[i], points[i + 1])].push_back(cable);
    }

    /// How far to the left of the piece, seen from a to b, a cable is drawn, in lanes.
    double offset(std::size_t cable, PlanPoint a, PlanPoint b) const {
        const std::vector<std::size_t>& here = cables_.at(key_of(a, b));
        const auto place = std::find(here.begin(), here.end(), cable) - here.begin();
        const double lane = static_cast<double>(place) - (static_cast<double>(here.size()) - 1) / 2;
        // The lane belongs to the trench, not to the way the cable goes.
        const bool forward = std::pair(a.x, a.y) < std::pair(b.x, b.y);
        return forward ? lane : -lane;
    }

  private:
    std::map<LegKey, std::vector<std::size_t>> cables_;
};

std::vector<SheetPoint> in_its_lane(const PlanDrawing& plan, const Lanes& lanes, std::size_t cable,
                                    const std::vector<PlanPoint>& points) {
    constexpr double lane_width = 4.4;
    std::vector<SheetPoint> out;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const SheetPoint a = plan.sheet.at(points[i]);
        const SheetPoint b = plan.sheet.at(points[i + 1]);
        const double length = std::max(std::hypot(b.x - a.x, b.y - a.y), 1e-9);
        const double off = lanes.offset(cable, points[i], points[i + 1]) * lane_width;
        const double x = (b.y - a.y) / length * off;
        const double y = -(b.x - a.x) / length * off;
        const bool at_start = i == 0;
        const bool at_end = i + 2 == points.size();
        // Lanes begin and end in the parts themselves; short pieces have no room to spread.
        const double taper = std::min(10.0, length / 3);
        const double ux = (b.x - a.x) / length * taper;
        const double uy = (b.y - a.y) / length * taper;
        if (at_start) out.push_back(a);
        out.push_back(at_start ? SheetPoint{a.x + x + ux, a.y + y + uy} : SheetPoint{a.x + x, a.y + y});
        out.push_back(at_end ? SheetPoint{b.x + x - ux, b.y + y - uy} : SheetPoint{b.x + x, b.y + y});
        if (at_end) out.push_back(b);
    }
    return out;
}

std::string cable_title(const PlanDrawing& plan, const DrawnCable& cable) {
    std::string title = fmt::format("{} to {}", cable.from, cable.part);
    if (cable.length && cable.length->length) title += ", " + plan.length(*cable.length->length);
    if (cable.length && cable.length->origin == LengthOrigin::typed) title += " (typed; drawn straight)";
    title += cable.cable.empty() ? ", cable not chosen yet" : " of " + cable.cable;
    if (cable.run) title += ", run " + plan.site.runs[*cable.run].id;
    return title;
}

/// Places on a cable for the tag of its run: on its pieces, the longest first.
std::vector<LabelPlace> places_on(const std::vector<SheetPoint>& line, double width, double height) {
    std::vector<LabelPlace> places;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const double length = std::hypot(line[i + 1].x - line[i].x, line[i + 1].y - line[i].y);
        if (length < 36) continue;
        for (const double share : {0.5, 0.38, 0.62, 0.26, 0.74}) {
            const SheetPoint on = point_between(line[i], line[i + 1], share);
            places.push_back({box_around(on, width, height), 300 / length + std::abs(share - 0.5), {}});
        }
    }
    return places;
}

double drawn_length(const DrawnCable& cable) {
    const std::vector<PlanPoint> points = course(cable);
    double length = 0;
    for (std::size_t i = 0; i + 1 < points.size(); ++i)
        length += distance(points[i], points[i + 1]).value();
    return length;
}

/// Cables of one run that fan out from a part need no tag each: the two longest bear it.
std::vector<bool> bearing_tags(const std::vector<DrawnCable>& cables) {
    constexpr std::size_t tags_of_a_fan = 2;
    using LongestFirst = std::multimap<double, std::size_t, std::greater<>>;
    std::map<std::pair<std::string_view, std::optional<std::size_t>>, LongestFirst> fans;
    for (std::size_t i = 0; i < cables.size(); ++i)
        fans[{cables[i].from, cables[i].run}].emplace(drawn_length(cables[i]), i);
    std::vector<bool> out(cables.size());
    for (const auto& [from, fan] : fans) {
        auto cable = fan.begin();
        for (std::size_t k = 0; k < tags_of_a_fan && cable != fan.end(); ++k, ++cable)
            out[cable->second] = cables[cable->second].run.has_value();
    }
    return out;
}

void add_tag(PlanDrawing& plan, std::size_t run, const std::vector<SheetPoint>& line) {
    const std::string& id = plan.site.runs[run].id;
    const LabelText tag{.part = id,
                        .name = shortened(id, 8),
                        .figure = {},
                        .size = 9,
                        .bold = true,
                        .classes = "rw-tag-text",
                        .framed = true,
                        .group = run_class(run)};
    plan.add_label(tag, {.places = places_on(line, tag.width(), tag.height()), .optional = true});
}

void draw_cable(PlanDrawing& plan, const DrawnCable& cable, const std::vector<SheetPoint>& line) {
    const CableStroke stroke = cable_stroke(cable.type);
    const std::string colour = cable.run ? run_class(*cable.run) : "rw-run6";
    const bool typed = cable.length && cable.length->origin == LengthOrigin::typed;
    plan.wires.push_back(
        {.part = cable.part,
         .look = "rw-part rw-wire " + colour + (typed ? " rw-typed" : ""),
         .title = cable_title(plan, cable),
         .lines = {{.look = "rw-cable-edge", .points = line, .width = stroke.width + 2},
                   {.look = "rw-cable", .points = line, .width = stroke.width, .dashes = stroke.dashes}},
         .symbol = {},
         .at = {}});
    for (std::size_t i = 0; i + 1 < line.size(); ++i)
        plan.label_ground.lines.emplace_back(line[i], line[i + 1]);
}

} // namespace

void draw_cables(PlanDrawing& plan) {
    Lanes lanes;
    for (std::size_t i = 0; i < plan.cables.size(); ++i)
        lanes.add(i, course(plan.cables[i]));
    const std::vector<bool> tagged = bearing_tags(plan.cables);
    for (std::size_t i = 0; i < plan.cables.size(); ++i) {
        const std::vector<PlanPoint> points = course(plan.cables[i]);
        if (points.size() < 2) continue;
        const std::vector<SheetPoint> line = in_its_lane(plan, lanes, i, points);
        draw_cable(plan, plan.cables[i], line);
        if (tagged[i]) add_tag(plan, *plan.cables[i].run, line);
    }
}

} // namespace rillwatt
