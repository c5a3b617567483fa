#include "obstacle_map.hpp"

#include <boost/geometry.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <boost/iterator/function_output_iterator.hpp>

#include "outline_geometry.hpp"
#include <algorithm>
#include <cmath>
#include <numbers>

namespace rillwatt {

namespace bg = boost::geometry;
namespace bgi = boost::geometry::index;

namespace {

using MapPoint = bg::model::d2::point_xy<double>;
using MapBox = bg::model::box<MapPoint>;
using MapSegment = bg::model::segment<MapPoint>;
using Tree = bgi::rtree<std::pair<MapBox, std::size_t>, bgi::quadratic<8>>;

constexpr double pi = std::numbers::pi;

MapBox box_of(PlanPoint a, PlanPoint b) {
    return {{std::min(a.x, b.x) - touch_tolerance, std::min(a.y, b.y) - touch_tolerance},
            {std::max(a.x, b.x) + touch_tolerance, std::max(a.y, b.y) + touch_tolerance}};
}

MapPoint map_point(PlanPoint p) { return {p.x, p.y}; }

/// Which kind lies on top where areas overlap.
int rank(AreaKind kind) { return kind == AreaKind::water ? 2 : kind == AreaKind::building ? 1 : 0; }

bool is_obstacle(AreaKind kind) {
    return kind == AreaKind::water || kind == AreaKind::building || kind == AreaKind::paving;
}

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

/// The directions from a point that lead into one obstacle.
using Sector = Surroundings::Sector;
void add_sectors(const std::vector<PlanPoint>& outline, PlanPoint p, std::vector<Sector>& out) {
    const std::size_t n = outline.size();
    const auto heading = [](PlanPoint d) { return std::atan2(d.y, d.x); };
    bool touched = false;
    for (std::size_t i = 0; i < n; ++i) {
        const PlanPoint here = outline[i];
        const PlanPoint next = outline[(i + 1) % n];
        if (same_place(here, p)) {
            const double from = heading(next - here);
            double span = std::fmod(heading(outline[(i + n - 1) % n] - here) - from, 2 * pi);
            if (span < 0) span += 2 * pi;
            out.push_back({from, span});
            touched = true;
        } else if (!same_place(next, p) && same_place(nearest_on_segment(here, next, p), p)) {
            out.push_back({heading(next - here), pi});
            touched = true;
        }
    }
    if (!touched && locate(outline, p) == Location::inside) out.push_back({0, 2 * pi});
}

/// The sides of a directed piece of line, at a point of it, that lie inside an outline.
struct Sides {
    bool left = false;
    bool right = false;
};
Sides sides_inside(const std::vector<PlanPoint>& outline, PlanPoint p, PlanPoint along) {
    Sides sides;
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
        if (!same_place(nearest_on_segment(outline[j], outline[i], p), p)) continue;
        // An outline may come back along its own side: a ring drawn with a slit. Then both sides lie inside.
        (dot(outline[i] - outline[j], along) > 0 ? sides.left : sides.right) = true;
    }
    if (sides.left || sides.right) return sides;
    const bool inside = locate(outline, p) == Location::inside;
    return {inside, inside};
}

} // namespace

struct ObstacleMap::Index {
    Tree areas;
    Tree edges;
};

namespace {

std::vector<Obstacle> obstacles_of(const Site& site) {
    std::vector<Obstacle> obstacles;
    for (std::size_t i = 0; i < site.areas.size(); ++i) {
        const Area& area = site.areas[i];
        std::vector<PlanPoint> outline =
            is_obstacle(area.kind) ? tidy_outline(area.outline) : std::vector<PlanPoint>{};
        if (!outline.empty()) obstacles.push_back({i, area.kind, std::move(outline), {}, {}});
    }
    return obstacles;
}

/// A gap narrower than this is the rounding of a seam: no spade goes through it, in metres.
constexpr double seam_width = 0.003;

/// Gives corners that nearly meet one place, and outlines that nearly pass through a corner that corner.
void close_seams(std::vector<Obstacle>& obstacles) {
    const auto nearly = [](PlanPoint p, PlanPoint q) { return norm(q - p) <= seam_width; };
    std::vector<PlanPoint> corners;
    for (Obstacle& obstacle : obstacles) {
        const std::size_t earlier = corners.size();
        for (PlanPoint& p : obstacle.outline) {
            const auto last = corners.begin() + static_cast<std::ptrdiff_t>(earlier);
            const auto match = std::find_if(corners.begin(), last, [&](PlanPoint q) { return nearly(p, q); });
            if (match != last) p = *match;
            corners.push_back(p);
        }
    }
    for (Obstacle& obstacle : obstacles) {
        std::vector<PlanPoint> outline;
        for (std::size_t i = 0; i < obstacle.outline.size(); ++i) {
            const PlanPoint a = obstacle.outline[i];
            const PlanPoint b = obstacle.outline[(i + 1) % obstacle.outline.size()];
            std::vector<PlanPoint> on_side;
            for (const PlanPoint p : corners) {
                const PlanPoint foot = nearest_on_segment(a, b, p);
                if (nearly(foot, p) && !same_place(foot, p) && !nearly(a, p) && !nearly(b, p))
                    on_side.push_back(p);
            }
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
    std::vector<Tree::value_type> area_boxes;
    std::vector<Tree::value_type> edge_boxes;
    for (std::size_t i = 0; i < obstacles_.size(); ++i) {
        Obstacle& obstacle = obstacles_[i];
        obstacle.low = obstacle.high = obstacle.outline[0];
        for (std::size_t k = 0; k < obstacle.outline.size(); ++k) {
            const PlanPoint p = obstacle.outline[k];
            const PlanPoint next = obstacle.outline[(k + 1) % obstacle.outline.size()];
            obstacle.low = {std::min(obstacle.low.x, p.x), std::min(obstacle.low.y, p.y)};
            obstacle.high = {std::max(obstacle.high.x, p.x), std::max(obstacle.high.y, p.y)};
            edge_boxes.emplace_back(box_of(p, next), edges_.size());
            edges_.push_back({p, next, i});
        }
        area_boxes.emplace_back(box_of(obstacle.low, obstacle.high), i);
    }
    index_ = std::make_unique<Index>(Index{Tree(area_boxes), Tree(edge_boxes)});
}

ObstacleMap::~ObstacleMap() = default;
ObstacleMap::ObstacleMap(ObstacleMap&&) noexcept = default;

std::vector<std::size_t> ObstacleMap::covering(PlanPoint point) const {
    std::vector<std::size_t> out;
    index_->areas.query(bgi::intersects(map_point(point)),
                        boost::make_function_output_iterator([&](const auto& hit) {
                            if (locate(obstacles_[hit.second].outline, point) != Location::outside)
                                out.push_back(hit.second);
                        }));
    std::sort(out.begin(), out.end());
    return out;
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
    for (const Edge& edge : edges_) {
        if (!contains(inside, edge.obstacle)) continue;
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
    index_->areas.query(bgi::intersects(map_point(point)),
                        boost::make_function_output_iterator([&](const auto& hit) {
                            found.clear();
                            add_sectors(obstacles_[hit.second].outline, point, found);
                            for (const Sector& s : found) {
                                sectors.push_back({hit.second, s});
                                bounds.push_back(s.from);
                                bounds.push_back(std::remainder(s.from + s.span, 2 * pi));
                            }
                        }));
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
    const MapBox around = box_of(a, b);
    return std::any_of(open.begin(), open.end(), [&](std::size_t i) {
        const MapBox box = box_of(obstacles_[i].low, obstacles_[i].high);
        if (!bg::intersects(around, box)) return false;
        return same_place(a, b) || bg::intersects(MapSegment(map_point(a), map_point(b)), box);
    });
}

bool ObstacleMap::passable(PlanPoint a, PlanPoint b, const OpenObstacles& open, std::size_t* hint) const {
    if (same_place(a, b)) return true;
    if (!open.empty() && near_open(a, b, open)) return !barred_between(a, b, open);
    if (hint && *hint < edges_.size() && proper_crossing(a, b, edges_[*hint].a, edges_[*hint].b).crosses)
        return false;
    const MapSegment piece(map_point(a), map_point(b));
    const auto bars = [&](const Tree::value_type& entry) {
        return proper_crossing(a, b, edges_[entry.second].a, edges_[entry.second].b).crosses;
    };
    const auto hit = index_->edges.qbegin(bgi::intersects(piece) && bgi::satisfies(bars));
    if (hit != index_->edges.qend()) {
        if (hint) *hint = hit->second;
        return false;
    }
    return !barred_between(a, b, open);
}

std::vector<double> ObstacleMap::cuts(PlanPoint a, PlanPoint b) const {
    const PlanPoint along = b - a;
    const double length = norm(along);
    std::vector<double> shares{0, 1};
    const auto add = [&](PlanPoint p) {
        const double share = dot(p - a, along) / (length * length);
        if (share > 0 && share < 1) shares.push_back(share);
    };
    const auto meet = [&](const Tree::value_type& entry) {
        const Edge& edge = edges_[entry.second];
        if (std::abs(cross(along, edge.a - a)) <= touch_tolerance * length) add(edge.a);
        if (std::abs(cross(along, edge.b - a)) <= touch_tolerance * length) add(edge.b);
        const SegmentCrossing crossing = proper_crossing(a, b, edge.a, edge.b);
        if (crossing.crosses) add(crossing.at);
    };
    const MapSegment piece(map_point(a), map_point(b));
    index_->edges.query(bgi::intersects(piece), boost::make_function_output_iterator(meet));
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
        const auto look = [&](const Tree::value_type& entry) {
            const Sides sides = sides_inside(obstacles_[entry.second].outline, middle, along);
            if (sides.left) left.push_back(entry.second);
            if (sides.right) right.push_back(entry.second);
        };
        index_->areas.query(bgi::intersects(map_point(middle)), boost::make_function_output_iterator(look));
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
        if (on_top && locate(obstacles_[obstacle].outline, middle) == Location::inside)
            inside += (shares[k + 1] - shares[k]) * norm(along);
    }
    return inside;
}

std::vector<PlanPoint> ObstacleMap::crossings_with(const OpenObstacles& open) const {
    std::vector<PlanPoint> out;
    for (const Edge& edge : edges_) {
        if (!contains(open, edge.obstacle)) continue;
        const MapSegment piece(map_point(edge.a), map_point(edge.b));
        const auto meet = [&](const Tree::value_type& entry) {
            const Edge& other = edges_[entry.second];
            const SegmentCrossing crossing = proper_crossing(edge.a, edge.b, other.a, other.b);
            if (other.obstacle != edge.obstacle && crossing.crosses) out.push_back(crossing.at);
        };
        index_->edges.query(bgi::intersects(piece), boost::make_function_output_iterator(meet));
    }
    return out;
}

} // namespace rillwatt
