#include "rillwatt/light/obstacles.hpp"

#include <algorithm>

namespace rillwatt {
namespace {

constexpr double touch = 1e-6; ///< metres: nearer than this is touching, not crossing

double side_of(PlanPoint p, SpacePoint from, double dx, double dy) {
    return dx * (p.y - from.y) - dy * (p.x - from.x);
}

} // namespace

Obstacles::Obstacles(const Site& site) : outlines_(site.areas.size()), heights_(site.areas.size()) {
    for (std::size_t i = 0; i < site.areas.size(); ++i) {
        const Area& area = site.areas[i];
        if (area.height.value() <= 0 || area.outline.size() < 3) continue;
        outlines_[i] = area.outline;
        heights_[i] = area.height.value();
        for (std::size_t k = 0; k < area.outline.size(); ++k)
            walls_.push_back(
                {area.outline[k], area.outline[(k + 1) % area.outline.size()], area.height.value(), i});
    }
    std::vector<PlanBox> boxes;
    for (const Wall& wall : walls_) {
        boxes.push_back(box_of(wall.a, wall.b).grown(touch));
        top_ = std::max(top_, wall.height);
    }
    index_ = std::make_shared<const PlanIndex>(boxes);
}

std::vector<Wall> Obstacles::near(const PlanBox& box) const {
    std::vector<Wall> found;
    if (walls_.empty()) return found;
    for (const std::size_t i : index_->found(box))
        found.push_back(walls_[i]);
    return found;
}

/// The common case in a few multiplications. A line that grazes an end of the wall or runs along it cannot be
/// judged by one wall: then the whole outline decides.
bool Obstacles::wall_between(const Wall& wall, SpacePoint from, SpacePoint to) const {
    if (std::min(from.z, to.z) >= wall.height) return false;
    const double dx = to.x - from.x;
    const double dy = to.y - from.y;
    const double reach = touch * (std::abs(dx) + std::abs(dy));
    const double side_a = side_of(wall.a, from, dx, dy);
    const double side_b = side_of(wall.b, from, dx, dy);
    if (std::abs(side_a) <= reach || std::abs(side_b) <= reach) return passes_through(wall.area, from, to);
    if ((side_a > 0) == (side_b > 0)) return false;
    const double ex = wall.b.x - wall.a.x;
    const double ey = wall.b.y - wall.a.y;
    const double t = ((wall.a.x - from.x) * ey - (wall.a.y - from.y) * ex) / (dx * ey - dy * ex);
    const double plan = std::hypot(dx, dy);
    if (t * plan <= touch || (1 - t) * plan <= touch) return false;
    return from.z + t * (to.z - from.z) < wall.height - touch;
}

/// Cuts the line where it meets the outline and asks whether a piece lies inside and below the top.
bool Obstacles::passes_through(std::size_t area, SpacePoint from, SpacePoint to) const {
    const std::vector<PlanPoint>& outline = outlines_[area];
    const double dx = to.x - from.x;
    const double dy = to.y - from.y;
    std::vector<double> cuts{0, 1};
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
        const double ex = outline[i].x - outline[j].x;
        const double ey = outline[i].y - outline[j].y;
        const double turn = dx * ey - dy * ex;
        if (std::abs(turn) < 1e-15) continue;
        const double t = ((outline[j].x - from.x) * ey - (outline[j].y - from.y) * ex) / turn;
        if (t > 0 && t < 1) cuts.push_back(t);
    }
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 1; i < cuts.size(); ++i) {
        const double middle = (cuts[i - 1] + cuts[i]) / 2;
        const auto height_at = [&](double t) { return from.z + t * (to.z - from.z); };
        if (std::min(height_at(cuts[i - 1]), height_at(cuts[i])) >= heights_[area] - touch) continue;
        if (locate(outline, {from.x + middle * dx, from.y + middle * dy}) == Location::inside) return true;
    }
    return false;
}

bool Obstacles::blocked(const std::vector<Wall>& walls, SpacePoint from, SpacePoint to) const {
    return std::any_of(walls.begin(), walls.end(),
                       [&](const Wall& wall) { return wall_between(wall, from, to); });
}

std::optional<std::size_t> Obstacles::blocking_area(SpacePoint from, SpacePoint to,
                                                    const std::vector<std::size_t>& ignored) const {
    if (walls_.empty() || std::min(from.z, to.z) >= top_) return {};
    for (const std::size_t i : index_->found_along(on_plan(from), on_plan(to))) {
        const Wall& wall = walls_[i];
        if (std::find(ignored.begin(), ignored.end(), wall.area) != ignored.end()) continue;
        if (wall_between(wall, from, to)) return wall.area;
    }
    return {};
}

} // namespace rillwatt
