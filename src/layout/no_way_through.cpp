#include "no_way_through.hpp"

#include "rillwatt/layout/site_lengths.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <tuple>

namespace rillwatt {
namespace {

/// A straight pipe from ground that one end of a route can reach to ground that the other can.
struct Gap {
    PlanPoint a;
    PlanPoint b;
    double length = std::numeric_limits<double>::infinity();
};

/// Whether a straight line has its middle inside a closed obstacle, not along a seam or across open ground.
bool goes_under(const ObstacleMap& map, const OpenObstacles& open, PlanPoint a, PlanPoint b) {
    const PlanPoint middle = a + 0.5 * (b - a);
    const std::vector<std::size_t> covering = map.covering(middle);
    return std::any_of(covering.begin(), covering.end(), [&](std::size_t i) {
        return !std::binary_search(open.begin(), open.end(), i) && map.locate(i, middle) == Location::inside;
    });
}

/// Shortens a gap to the shortest from one of some points to an outline the others stand at. Of equal ones
/// the first counts, by outline, then by point.
void shorten(Gap& gap, const ObstacleMap& map, const OpenObstacles& open, const std::vector<PlanPoint>& from,
             const std::vector<PlanPoint>& others) {
    auto best = std::tuple(gap.length, std::size_t{0}, std::size_t{0});
    for (std::size_t i = 0; i < from.size(); ++i) {
        const PlanPoint p = from[i];
        auto look = [&](std::size_t k, double away) {
            if (away > std::get<0>(best)) return false;
            const ObstacleMap::Edge& edge = map.edges()[k];
            const PlanPoint foot = nearest_on_segment(edge.a, edge.b, p);
            const double length = norm(foot - p);
            const auto reaches = [&](PlanPoint other) { return map.passable(other, foot, open); };
            if (std::tuple(length, k, i) < best && length > touch_tolerance &&
                goes_under(map, open, p, foot) && std::any_of(others.begin(), others.end(), reaches)) {
                gap = {p, foot, length};
                best = {length, k, i};
            }
            return true;
        };
        map.edge_index().visit_from(p, look);
    }
}

/// Adds the middle of each stretch of outline between two of the points: a sleeve is better there than at a
/// corner.
std::vector<PlanPoint> with_middles(const ObstacleMap& map, const OpenObstacles& open,
                                    std::vector<PlanPoint> points) {
    std::vector<PlanBox> boxes;
    for (const PlanPoint p : points)
        boxes.push_back(box_of(p, p).grown(touch_tolerance));
    const PlanIndex index(boxes);
    const auto among = [&](PlanPoint p) {
        const std::vector<std::size_t> near = index.found(p);
        return std::any_of(near.begin(), near.end(), [&](std::size_t i) { return same_place(p, points[i]); });
    };
    std::vector<PlanPoint> middles;
    for (const ObstacleMap::Edge& edge : map.edges()) {
        const PlanPoint middle = edge.a + 0.5 * (edge.b - edge.a);
        if (among(edge.a) && among(edge.b) && !map.surroundings(middle, open).enclosed())
            middles.push_back(middle);
    }
    middles.insert(middles.end(), points.begin(), points.end());
    return middles;
}

/// The obstacle that the longest part of a straight line lies in.
std::optional<std::size_t> widest_crossed(const ObstacleMap& map, const OpenObstacles& open, PlanPoint a,
                                          PlanPoint b) {
    std::optional<std::size_t> widest;
    double most = touch_tolerance;
    for (const std::size_t i : map.near(box_of(a, b))) {
        if (std::binary_search(open.begin(), open.end(), i)) continue;
        const double inside = map.length_inside(a, b, i);
        if (inside <= most) continue;
        most = inside;
        widest = i;
    }
    return widest;
}

std::string point_text(PlanPoint p, LengthUnit unit) {
    return fmt::format("({}, {})", decimal_length_text(Metres(p.x), unit),
                       decimal_length_text(Metres(p.y), unit));
}

/// Sleeves with an end that no trench can come to, in words.
std::string buried_sleeves(const Site& site, const ObstacleMap& map, const OpenObstacles& open) {
    std::string text;
    for (const Sleeve& sleeve : site.sleeves) {
        for (const PlanPoint end : {sleeve.a, sleeve.b}) {
            if (!map.surroundings(end, open).enclosed()) continue;
            const std::size_t inside = map.covering(end).front();
            text += fmt::format(
                "; sleeve `{}` ends inside `{}`, {} from its edge, where no trench reaches it", sleeve.id,
                site.areas[map.obstacles()[inside].area].id,
                decimal_length_text(Metres(distance_to_outline(map.obstacles()[inside].outline, end)),
                                    site.settings.units));
        }
    }
    return text;
}

} // namespace

NoWay explain_no_way(const Site& site, TrenchFinder& finder, PlanPoint from, PlanPoint to) {
    const ObstacleMap& map = finder.map();
    const OpenObstacles open = finder.opened_by(from, to);
    const std::vector<PlanPoint> near_from = with_middles(map, open, finder.reachable(from, open));
    const std::vector<PlanPoint> near_to = with_middles(map, open, finder.reachable(to, open));
    Gap gap;
    shorten(gap, map, open, near_from, near_to);
    shorten(gap, map, open, near_to, near_from);

    const bool found = gap.length < std::numeric_limits<double>::infinity();
    std::optional<std::size_t> in_the_way;
    if (found) in_the_way = widest_crossed(map, open, gap.a, gap.b);
    if (!in_the_way) in_the_way = widest_crossed(map, open, from, to);

    NoWay out;
    if (in_the_way) out.blocked_by = site.areas[map.obstacles()[*in_the_way].area].id;
    const LengthUnit unit = site.settings.units;
    if (found)
        out.sleeve_hint =
            fmt::format("a sleeve from {} to {}, {} long, would open a way", point_text(gap.a, unit),
                        point_text(gap.b, unit), decimal_length_text(Metres(gap.length), unit));
    else
        out.sleeve_hint = fmt::format("a sleeve under `{}` would open a way", out.blocked_by);
    out.sleeve_hint += buried_sleeves(site, map, open);
    const auto closed = [](const Obstacle& obstacle) { return obstacle.gap_closed; };
    if (std::any_of(map.obstacles().begin(), map.obstacles().end(), closed))
        out.sleeve_hint += fmt::format("; gaps of up to {} mm between areas count as closed",
                                       widest_closed_gap.value() * 1000);
    return out;
}

} // namespace rillwatt
