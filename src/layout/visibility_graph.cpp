#include "visibility_graph.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

namespace rillwatt {
namespace {

double heading(PlanPoint from, PlanPoint to) { return std::atan2(to.y - from.y, to.x - from.x); }

/// Every obstacle corner once. In the order of the outlines, so that points that follow each other are mostly
/// seen past the same edges.
std::vector<PlanPoint> distinct_corners(const ObstacleMap& map) {
    std::vector<PlanPoint> corners;
    for (const Obstacle& obstacle : map.obstacles())
        corners.insert(corners.end(), obstacle.outline.begin(), obstacle.outline.end());
    std::vector<std::size_t> order(corners.size());
    for (std::size_t i = 0; i < order.size(); ++i)
        order[i] = i;
    const auto key = [&](std::size_t i) { return std::tuple(corners[i].x, corners[i].y, i); };
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
    const auto same = [&](std::size_t a, std::size_t b) { return corners[a] == corners[b]; };
    order.erase(std::unique(order.begin(), order.end(), same), order.end());
    std::sort(order.begin(), order.end());
    std::vector<PlanPoint> out;
    for (const std::size_t i : order)
        out.push_back(corners[i]);
    return out;
}

PlanIndex index_of(const std::vector<PlanPoint>& points) {
    std::vector<PlanBox> boxes;
    for (const PlanPoint p : points)
        boxes.push_back(box_of(p, p));
    return PlanIndex(boxes);
}

bool by_point(const VisibilityGraph::Neighbour& a, const VisibilityGraph::Neighbour& b) {
    return a.point < b.point;
}

} // namespace

VisibilityGraph::VisibilityGraph(const ObstacleMap& map, const std::vector<Sleeve>& sleeves) : map_(&map) {
    for (const Sleeve& sleeve : sleeves) {
        own_points_.push_back(map.settled(sleeve.a));
        own_points_.push_back(map.settled(sleeve.b));
    }
    sleeve_points_end_ = own_points_.size();
    const std::vector<PlanPoint> corners = distinct_corners(map);
    own_points_.insert(own_points_.end(), corners.begin(), corners.end());
    index_ = index_of(own_points_);
}

VisibilityGraph::VisibilityGraph(VisibilityGraph& with_nothing_open, OpenObstacles open)
    : map_(with_nothing_open.map_), open_(std::move(open)), base_(&with_nothing_open),
      own_points_(map_->crossings_with(open_)), index_(index_of(own_points_)),
      sleeve_points_end_(base_->sleeve_points_end_) {}

PlanPoint VisibilityGraph::point(std::size_t i) const {
    if (base_ == nullptr) return own_points_[i];
    return i < base_->size() ? base_->point(i) : own_points_[i - base_->size()];
}

VisibilityGraph::Vertex& VisibilityGraph::vertex(std::size_t i) {
    const auto [entry, is_new] = vertices_.try_emplace(i);
    Vertex& vertex = entry->second;
    if (!is_new) return vertex;
    const PlanPoint at = point(i);
    vertex.corner = i >= sleeve_points_end_;
    vertex.affected = map_->near_open(at, at, open_);
    const bool as_in_base = base_ && !vertex.affected && i < base_->size();
    vertex.surroundings = as_in_base ? base_->vertex(i).surroundings : map_->surroundings(at, open_);
    return vertex;
}

std::vector<std::size_t> VisibilityGraph::points_between(PlanPoint place, double nearer,
                                                         double within) const {
    std::vector<std::size_t> out;
    if (base_) out = base_->points_between(place, nearer, within);
    const std::size_t first = base_ ? base_->size() : 0;
    auto add = [&](std::size_t i) {
        const double away = norm(own_points_[i] - place);
        if (away >= nearer && away < within) out.push_back(first + i);
        return true;
    };
    index_.visit(box_of(place, place).grown(within), add);
    std::sort(out.begin(), out.end());
    return out;
}

std::vector<std::size_t> VisibilityGraph::points_near(PlanPoint place, double within) const {
    return points_between(place, 0, within);
}

bool VisibilityGraph::may_leave(const Vertex& vertex, double direction) const {
    return vertex.surroundings.free(direction) &&
           (!vertex.corner || vertex.surroundings.worth_turning(direction));
}

/// Whether a path may have any business at a point.
bool VisibilityGraph::may_turn(std::size_t i) {
    const Vertex& there = vertex(i);
    return !there.corner || there.surroundings.is_turning_point();
}

bool VisibilityGraph::joined(std::size_t a, std::size_t b, std::size_t* hint) {
    const PlanPoint from = point(a);
    const PlanPoint to = point(b);
    if (same_place(from, to)) return true;
    const double direction = heading(from, to);
    return may_leave(vertex(a), direction) && may_leave(vertex(b), direction + std::numbers::pi) &&
           map_->passable(from, to, open_, hint);
}

std::optional<std::size_t> VisibilityGraph::sleeve_between(std::size_t a, std::size_t b) const {
    if (a >= sleeve_points_end_ || b >= sleeve_points_end_ || a / 2 != b / 2) return std::nullopt;
    return a / 2;
}

/// Adds the neighbours that lie beyond what is known, up to `within`.
void VisibilityGraph::look_up(std::size_t here, double within, Known& known) {
    const PlanPoint at = point(here);
    const bool ask_base = base_ && !vertex(here).affected && here < base_->size();
    const std::vector<Neighbour> in_base =
        ask_base ? base_->neighbours(here, within) : std::vector<Neighbour>{};
    std::size_t hint = map_->edges().size();
    const auto is_neighbour = [&](std::size_t other) {
        if (sleeve_between(here, other)) return true;
        if (std::binary_search(in_base.begin(), in_base.end(), Neighbour{other, 0}, by_point)) return true;
        if (!may_turn(other)) return false;
        const bool as_in_base =
            ask_base && !vertex(other).affected && !map_->near_open(at, point(other), open_);
        return !as_in_base && joined(here, other, &hint);
    };
    for (const std::size_t other : points_between(at, known.within, within))
        if (other != here && is_neighbour(other))
            known.neighbours.push_back({other, norm(point(other) - at)});
    std::sort(known.neighbours.begin(), known.neighbours.end(), by_point);
    known.within = within;
}

const std::vector<VisibilityGraph::Neighbour>& VisibilityGraph::neighbours(std::size_t point, double within) {
    Known& known = vertex(point).known;
    if (within > known.within) look_up(point, within, known);
    return known.neighbours;
}

bool VisibilityGraph::may_come_from(std::size_t other, PlanPoint place) {
    if (!may_turn(other)) return false;
    const PlanPoint there = point(other);
    if (same_place(there, place)) return true;
    return may_leave(vertex(other), heading(there, place)) && map_->passable(place, there, open_);
}

const std::vector<VisibilityGraph::Neighbour>& VisibilityGraph::seen_from(PlanPoint place, double within) {
    Known& known = seen_[{place.x, place.y}];
    if (within <= known.within) return known.neighbours;
    for (const std::size_t other : points_between(place, known.within, within))
        if (may_come_from(other, place)) known.neighbours.push_back({other, norm(point(other) - place)});
    std::sort(known.neighbours.begin(), known.neighbours.end(), by_point);
    known.within = within;
    return known.neighbours;
}

bool VisibilityGraph::sees(PlanPoint a, PlanPoint b) const { return map_->passable(a, b, open_); }

} // namespace rillwatt
