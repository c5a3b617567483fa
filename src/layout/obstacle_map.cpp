#include "obstacle_map.hpp"

#include "rillwatt/layout/site_lengths.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <optional>
#include <unordered_map>
#include <utility>

namespace rillwatt {

namespace {

constexpr double pi = std::numbers::pi;

/// Which kind lies on top where areas overlap.
int rank(AreaKind kind) { return kind == AreaKind::water ? 2 : kind == AreaKind::building ? 1 : 0; }

bool is_obstacle(AreaKind kind) {
    return kind == AreaKind::water || kind == AreaKind::building || kind == AreaKind::paving;
}

using Sector = Surroundings::Sector;

/// Fewer corners than this are looked at one after the other sooner than through an index.
constexpr std::size_t few_corners = 40;

bool contains(const OpenObstacles& open, std::size_t obstacle) {
    return std::binary_search(open.begin(), open.end(), obstacle);
}

/// Whether ground covered by these obstacles is barred.
bool is_barred(const std::vector<Obstacle>& obstacles, const std::vector<std::size_t>& covered_by,
               const OpenObstacles& open) {
    int closed_rank = -1;
    int open_rank = -1;
    for (const std::size_t i : covered_by) {
        int& highest = contains(open, i) ? open_rank : closed_rank;
        highest = std::max(highest, rank(obstacles[i].kind));
    }
    return closed_rank >= 0 && closed_rank > open_rank;
}

std::vector<Obstacle> obstacles_of(const Site& site) {
    std::vector<Obstacle> obstacles;
    for (std::size_t i = 0; i < site.areas.size(); ++i) {
        const Area& area = site.areas[i];
        std::vector<PlanPoint> outline =
            is_obstacle(area.kind) ? tidy_outline(area.outline) : std::vector<PlanPoint>{};
        if (!outline.empty()) obstacles.push_back({i, area.kind, std::move(outline), false});
    }
    return obstacles;
}

constexpr double seam_width = widest_closed_gap.value();

bool nearly(PlanPoint p, PlanPoint q) { return norm(q - p) <= seam_width; }

/// Corners by where they are, in squares as wide as a seam.
class CornerGrid {
  public:
    void add(PlanPoint p, std::size_t number) { squares_[square(p)].push_back(number); }

    /// The first of the corners before `end` that nearly meets a point.
    std::optional<std::size_t> first_near(PlanPoint p, const std::vector<PlanPoint>& corners,
                                          std::size_t end) const {
        std::optional<std::size_t> first;
        const Square here = square(p);
        for (const int across : {-1, 0, 1})
            for (const int up : {-1, 0, 1}) {
                const auto found = squares_.find({here.first + across, here.second + up});
                if (found == squares_.end()) continue;
                for (const std::size_t i : found->second)
                    if (i < end && i < first.value_or(end) && nearly(p, corners[i])) first = i;
            }
        return first;
    }

  private:
    using Square = std::pair<std::int64_t, std::int64_t>;
    struct Hash {
        std::size_t operator()(const Square& s) const {
            return static_cast<std::size_t>(s.first) * 0x9E3779B97F4A7C15U ^
                   static_cast<std::size_t>(s.second);
        }
    };
    static Square square(PlanPoint p) {
        return {std::llround(std::floor(p.x / seam_width)), std::llround(std::floor(p.y / seam_width))};
    }

    std::unordered_map<Square, std::vector<std::size_t>, Hash> squares_;
};

/// Gives corners that nearly meet one place, that of the first; returns all corners.
std::vector<PlanPoint> join_corners(std::vector<Obstacle>& obstacles) {
    std::vector<PlanPoint> corners;
    CornerGrid grid;
    for (Obstacle& obstacle : obstacles) {
        const std::size_t earlier = corners.size();
        for (PlanPoint& p : obstacle.outline) {
            if (const auto match = grid.first_near(p, corners, earlier)) {
                obstacle.gap_closed |= !same_place(p, corners[*match]);
                p = corners[*match];
            }
            grid.add(p, corners.size());
            corners.push_back(p);
        }
    }
    return corners;
}

/// Closes gaps too narrow for a spade: corners that nearly meet get one place, and outlines that nearly pass
/// through a corner that corner.
void close_seams(std::vector<Obstacle>& obstacles) {
    const std::vector<PlanPoint> corners = join_corners(obstacles);
    std::vector<PlanBox> places;
    for (const PlanPoint p : corners)
        places.push_back(box_of(p, p));
    const PlanIndex index(places);
    for (Obstacle& obstacle : obstacles) {
        std::vector<PlanPoint> outline;
        for (std::size_t i = 0; i < obstacle.outline.size(); ++i) {
            const PlanPoint a = obstacle.outline[i];
            const PlanPoint b = obstacle.outline[(i + 1) % obstacle.outline.size()];
            std::vector<PlanPoint> on_side;
            for (const std::size_t k : index.found(box_of(a, b).grown(2 * seam_width))) {
                const PlanPoint p = corners[k];
                const PlanPoint foot = nearest_on_segment(a, b, p);
                if (nearly(foot, p) && !same_place(foot, p) && !nearly(a, p) && !nearly(b, p))
                    on_side.push_back(p);
            }
            obstacle.gap_closed |= !on_side.empty();
            std::sort(on_side.begin(), on_side.end(),
                      [&](PlanPoint p, PlanPoint q) { return dot(p - q, b - a) < 0; });
            outline.push_back(a);
            outline.insert(outline.end(), on_side.begin(), on_side.end());
        }
        obstacle.outline = tidy_outline(outline);
    }
    std::erase_if(obstacles, [](const Obstacle& obstacle) { return obstacle.outline.empty(); });
}

} // namespace

ObstacleMap::ObstacleMap(const Site& site) : obstacles_(obstacles_of(site)) {
    close_seams(obstacles_);
    std::vector<std::vector<PlanPoint>> outlines;
    for (const Obstacle& obstacle : obstacles_)
        outlines.push_back(obstacle.outline);
    outlines_ = OutlineIndex(std::move(outlines));
}

std::vector<std::size_t> ObstacleMap::covering(PlanPoint point) const { return outlines_.covering(point); }

/// Edges of an obstacle that a point lies on, by their numbers within its outline, rising.
std::vector<std::size_t> ObstacleMap::edges_touching(std::size_t obstacle, PlanPoint p) const {
    std::vector<std::size_t> found;
    const std::size_t first = outlines_.first_side(obstacle);
    const std::size_t count = obstacles_[obstacle].outline.size();
    const auto touch = [&](const Edge& edge) { return same_place(nearest_on_segment(edge.a, edge.b, p), p); };
    if (count <= few_corners) {
        for (std::size_t k = 0; k < count; ++k)
            if (touch(edges()[first + k])) found.push_back(k);
        return found;
    }
    for (const std::size_t k : edge_index().found(p))
        if (edges()[k].outline == obstacle && touch(edges()[k])) found.push_back(k - first);
    return found;
}

/// The directions from a point that lead into one obstacle.
void ObstacleMap::add_sectors(std::size_t obstacle, PlanPoint p, std::vector<Sector>& out) const {
    const std::vector<PlanPoint>& outline = obstacles_[obstacle].outline;
    const std::size_t n = outline.size();
    const auto heading = [](PlanPoint d) { return std::atan2(d.y, d.x); };
    bool touched = false;
    for (const std::size_t i : edges_touching(obstacle, p)) {
        const PlanPoint here = outline[i];
        const PlanPoint next = outline[(i + 1) % n];
        if (same_place(here, p)) {
            const double from = heading(next - here);
            double span = std::fmod(heading(outline[(i + n - 1) % n] - here) - from, 2 * pi);
            if (span < 0) span += 2 * pi;
            out.push_back({from, span});
            touched = true;
        } else if (!same_place(next, p)) {
            out.push_back({heading(next - here), pi});
            touched = true;
        }
    }
    if (!touched && locate(obstacle, p) == Location::inside) out.push_back({0, 2 * pi});
}

ObstacleMap::Sides ObstacleMap::sides_inside(std::size_t obstacle, PlanPoint p, PlanPoint along) const {
    Sides sides;
    const std::size_t first = outlines_.first_side(obstacle);
    for (const std::size_t k : edges_touching(obstacle, p)) {
        const Edge& edge = edges()[first + k];
        // An outline may come back along its own side: a ring drawn with a slit. Then both sides lie inside.
        (dot(edge.b - edge.a, along) > 0 ? sides.left : sides.right) = true;
    }
    if (sides.left || sides.right) return sides;
    const bool inside = locate(obstacle, p) == Location::inside;
    return {inside, inside};
}

OpenObstacles ObstacleMap::opened_by(PlanPoint end) const {
    const std::vector<std::size_t> all = covering(end);
    OpenObstacles water;
    for (const std::size_t i : all)
        if (obstacles_[i].kind == AreaKind::water) water.push_back(i);
    if (!water.empty()) return water;
    return surroundings(end, {}).enclosed() ? all : OpenObstacles{};
}

PlanPoint ObstacleMap::settled(PlanPoint point) const {
    const std::vector<std::size_t> inside = covering(point);
    if (inside.empty() || !surroundings(point, {}).enclosed()) return point;
    for (const std::size_t k : edge_index().found(box_of(point, point).grown(seam_width))) {
        const Edge& edge = edges()[k];
        if (!contains(inside, edge.outline)) continue;
        const PlanPoint foot = nearest_on_segment(edge.a, edge.b, point);
        if (norm(foot - point) <= seam_width && !surroundings(foot, {}).enclosed()) return foot;
    }
    return point;
}

Surroundings ObstacleMap::surroundings(PlanPoint point, const OpenObstacles& open) const {
    struct AreaSector {
        std::size_t obstacle;
        Sector sector;
    };
    std::vector<AreaSector> sectors;
    std::vector<double> bounds;
    std::vector<Sector> found;
    for (const std::size_t i : outlines_.near(point)) {
        found.clear();
        add_sectors(i, point, found);
        for (const Sector& s : found) {
            sectors.push_back({i, s});
            bounds.push_back(s.from);
            bounds.push_back(std::remainder(s.from + s.span, 2 * pi));
        }
    }
    if (sectors.empty()) return Surroundings{};
    std::sort(bounds.begin(), bounds.end());

    // Between two neighbouring bounds the ground is the same all the way.
    std::vector<Sector> barred;
    std::vector<std::size_t> covered_by;
    for (std::size_t k = 0; k < bounds.size(); ++k) {
        const bool last = k + 1 == bounds.size();
        const double width = last ? bounds[0] + 2 * pi - bounds[k] : bounds[k + 1] - bounds[k];
        if (width < 1e-9) continue;
        const double middle = bounds[k] + width / 2;
        covered_by.clear();
        for (const AreaSector& s : sectors) {
            double turn = std::fmod(middle - s.sector.from, 2 * pi);
            if (turn < 0) turn += 2 * pi;
            if (turn < s.sector.span) covered_by.push_back(s.obstacle);
        }
        if (!is_barred(obstacles_, covered_by, open)) continue;
        const bool joins = !barred.empty() && bounds[k] - (barred.back().from + barred.back().span) < 1e-8;
        if (joins)
            barred.back().span = bounds[k] + width - barred.back().from;
        else
            barred.push_back({bounds[k], width});
    }
    // The last sector may run on into the first.
    if (barred.size() > 1 &&
        barred.front().from + 2 * pi - (barred.back().from + barred.back().span) < 1e-8) {
        barred.front().span = barred.front().from + barred.front().span + 2 * pi - barred.back().from;
        barred.front().from = barred.back().from;
        barred.pop_back();
    }
    return Surroundings(std::move(barred));
}

bool ObstacleMap::near_open(PlanPoint a, PlanPoint b, const OpenObstacles& open) const {
    const PlanBox around = box_of(a, b).grown(touch_tolerance);
    return std::any_of(open.begin(), open.end(), [&](std::size_t i) {
        const PlanBox& box = outlines_.box(i);
        return meet(around, box) && (same_place(a, b) || meets(a, b, box));
    });
}

bool ObstacleMap::passable(PlanPoint a, PlanPoint b, const OpenObstacles& open, std::size_t* hint) const {
    if (same_place(a, b)) return true;
    if (!open.empty() && near_open(a, b, open)) return !barred_between(a, b, open);
    const auto bars = [&](std::size_t k) {
        return proper_crossing(a, b, edges()[k].a, edges()[k].b).crosses;
    };
    if (hint && *hint < edges().size() && bars(*hint)) return false;
    std::size_t barred_by = edges().size();
    auto look = [&](std::size_t k) {
        if (bars(k)) barred_by = k;
        return barred_by != k;
    };
    edge_index().visit_along(a, b, look);
    if (barred_by == edges().size()) return !barred_between(a, b, open);
    if (hint) *hint = barred_by;
    return false;
}

std::vector<double> ObstacleMap::cuts(PlanPoint a, PlanPoint b) const {
    const PlanPoint along = b - a;
    const double length = norm(along);
    std::vector<double> shares{0, 1};
    const auto add = [&](PlanPoint p) {
        const double share = dot(p - a, along) / (length * length);
        if (share > 0 && share < 1) shares.push_back(share);
    };
    auto cut = [&](std::size_t k) {
        const Edge& edge = edges()[k];
        if (std::abs(cross(along, edge.a - a)) <= touch_tolerance * length) add(edge.a);
        if (std::abs(cross(along, edge.b - a)) <= touch_tolerance * length) add(edge.b);
        const SegmentCrossing crossing = proper_crossing(a, b, edge.a, edge.b);
        if (crossing.crosses) add(crossing.at);
        return true;
    };
    edge_index().visit_along(a, b, cut);
    std::sort(shares.begin(), shares.end());
    return shares;
}

bool ObstacleMap::barred_between(PlanPoint a, PlanPoint b, const OpenObstacles& open) const {
    const std::vector<double> shares = cuts(a, b);
    const PlanPoint along = b - a;
    const double length = norm(along);
    std::vector<std::size_t> left;
    std::vector<std::size_t> right;
    for (std::size_t k = 0; k + 1 < shares.size(); ++k) {
        if ((shares[k + 1] - shares[k]) * length <= 4 * touch_tolerance) continue;
        const PlanPoint middle = a + (shares[k] + shares[k + 1]) / 2 * along;
        left.clear();
        right.clear();
        for (const std::size_t i : outlines_.near(middle)) {
            const Sides sides = sides_inside(i, middle, along);
            if (sides.left) left.push_back(i);
            if (sides.right) right.push_back(i);
        }
        if (is_barred(obstacles_, left, open) && is_barred(obstacles_, right, open)) return true;
    }
    return false;
}

double ObstacleMap::length_inside(PlanPoint a, PlanPoint b, std::size_t obstacle) const {
    const std::vector<double> shares = cuts(a, b);
    const PlanPoint along = b - a;
    double inside = 0;
    for (std::size_t k = 0; k + 1 < shares.size(); ++k) {
        const PlanPoint middle = a + (shares[k] + shares[k + 1]) / 2 * along;
        const std::vector<std::size_t> all = covering(middle);
        const bool on_top = std::none_of(all.begin(), all.end(), [&](std::size_t i) {
            return rank(obstacles_[i].kind) > rank(obstacles_[obstacle].kind);
        });
        if (on_top && locate(obstacle, middle) == Location::inside)
            inside += (shares[k + 1] - shares[k]) * norm(along);
    }
    return inside;
}

std::vector<PlanPoint> ObstacleMap::crossings_with(const OpenObstacles& open) const {
    std::vector<PlanPoint> out;
    for (const std::size_t i : open)
        for (std::size_t k = 0; k < obstacles_[i].outline.size(); ++k) {
            const Edge& edge = edges()[outlines_.first_side(i) + k];
            for (const std::size_t j : edge_index().found_along(edge.a, edge.b)) {
                const Edge& other = edges()[j];
                const SegmentCrossing crossing = proper_crossing(edge.a, edge.b, other.a, other.b);
                if (other.outline != i && crossing.crosses) out.push_back(crossing.at);
            }
        }
    return out;
}

} // namespace rillwatt
