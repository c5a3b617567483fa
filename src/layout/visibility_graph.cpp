#include "visibility_graph.hpp"

#include "outline_geometry.hpp"
#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace rillwatt {
namespace {

double heading(PlanPoint from, PlanPoint to) { return std::atan2(to.y - from.y, to.x - from.x); }

/// Every obstacle corner once, left to right.
std::vector<PlanPoint> distinct_corners(const ObstacleMap& map) {
    std::vector<PlanPoint> corners;
    for (const Obstacle& obstacle : map.obstacles()) {
        for (const PlanPoint p : obstacle.outline)
            corners.push_back(p);
    }
    std::vector<PlanPoint> sorted = corners;
    const auto before = [](PlanPoint a, PlanPoint b) { return std::pair(a.x, a.y) < std::pair(b.x, b.y); };
    std::sort(sorted.begin(), sorted.end(), before);
    // In the order of the outlines, so that points that follow each other are mostly seen past the same
    // edges.
    std::vector<PlanPoint> out;
    for (const PlanPoint p : corners) {
        const auto first = std::lower_bound(sorted.begin(), sorted.end(), p, before);
        if (first == sorted.end() || !(*first == p)) continue;
        out.push_back(p);
        sorted.erase(first, std::upper_bound(first, sorted.end(), p, before));
    }
    return out;
}

} // namespace

VisibilityGraph::VisibilityGraph(const ObstacleMap& map, const std::vector<Sleeve>& sleeves,
                                 OpenObstacles open, VisibilityGraph* with_nothing_open)
    : map_(&map), open_(std::move(open)), base_(with_nothing_open) {
    // Sleeve ends come first: a graph and the one it asks then number all their common points alike.
    for (const Sleeve& sleeve : sleeves) {
        add_point(map.settled(sleeve.a), false);
        add_point(map.settled(sleeve.b), false);
    }
    sleeve_points_end_ = points_.size();
    const std::vector<PlanPoint> corners =
        base_
            ? std::vector<PlanPoint>(base_->points_.begin() + static_cast<std::ptrdiff_t>(sleeve_points_end_),
                                     base_->points_.end())
            : distinct_corners(map);
    for (const PlanPoint p : corners)
        add_point(p, true);
    for (const PlanPoint p : map.crossings_with(open_))
        add_point(p, true);
}

void VisibilityGraph::add_point(PlanPoint p, bool corner) {
    Vertex vertex;
    vertex.corner = corner;
    vertex.affected = map_->near_open(p, p, open_);
    const bool known = base_ && !vertex.affected && points_.size() < base_->points_.size();
    vertex.surroundings =
        known ? base_->vertices_[points_.size()].surroundings : map_->surroundings(p, open_);
    points_.push_back(p);
    vertices_.push_back(std::move(vertex));
}

bool VisibilityGraph::may_leave(const Vertex& vertex, double direction) const {
    return vertex.surroundings.free(direction) &&
           (!vertex.corner || vertex.surroundings.worth_turning(direction));
}

bool VisibilityGraph::joined(std::size_t a, std::size_t b, std::size_t* hint) const {
    if (same_place(points_[a], points_[b])) return true;
    const double direction = heading(points_[a], points_[b]);
    return may_leave(vertices_[a], direction) && may_leave(vertices_[b], direction + std::numbers::pi) &&
           map_->passable(points_[a], points_[b], open_, hint);
}

std::optional<std::size_t> VisibilityGraph::sleeve_between(std::size_t a, std::size_t b) const {
    if (a >= sleeve_points_end_ || b >= sleeve_points_end_ || a / 2 != b / 2) return std::nullopt;
    return a / 2;
}

const std::vector<VisibilityGraph::Neighbour>& VisibilityGraph::neighbours(std::size_t point) {
    Vertex& vertex = vertices_[point];
    if (vertex.neighbours) return *vertex.neighbours;
    std::vector<Neighbour> out;
    std::size_t hint = map_->edges().size();
    const bool ask_base = base_ && !vertex.affected && point < base_->points_.size();
    std::vector<char> known(points_.size(), 0);
    if (ask_base) {
        for (const Neighbour& n : base_->neighbours(point)) {
            out.push_back(n);
            known[n.point] = 1;
        }
    }
    for (std::size_t other = 0; other < points_.size(); ++other) {
        if (other == point || known[other]) continue;
        if (sleeve_between(point, other)) {
            out.push_back({other, norm(points_[other] - points_[point])});
            continue;
        }
        const Vertex& there = vertices_[other];
        if (there.corner && !there.surroundings.is_turning_point()) continue;
        if (ask_base && !there.affected && !map_->near_open(points_[point], points_[other], open_)) continue;
        if (joined(point, other, &hint)) out.push_back({other, norm(points_[other] - points_[point])});
    }
    vertex.neighbours = std::move(out);
    return *vertex.neighbours;
}

const std::vector<VisibilityGraph::Neighbour>& VisibilityGraph::seen_from(PlanPoint place) {
    const auto [entry, is_new] = seen_.try_emplace({place.x, place.y});
    if (!is_new) return entry->second;
    std::size_t hint = map_->edges().size();
    for (std::size_t other = 0; other < points_.size(); ++other) {
        const Vertex& there = vertices_[other];
        if (there.corner && !there.surroundings.is_turning_point()) continue;
        const double away = norm(points_[other] - place);
        const bool here = same_place(points_[other], place);
        if (!here && !may_leave(there, heading(points_[other], place))) continue;
        if (here || map_->passable(place, points_[other], open_, &hint))
            entry->second.push_back({other, away});
    }
    return entry->second;
}

bool VisibilityGraph::sees(PlanPoint a, PlanPoint b) const { return map_->passable(a, b, open_); }

} // namespace rillwatt
