#include "walk_line.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

constexpr double longest_mitre = 1.5; ///< times the offset

PlanPoint direction(PlanPoint a, PlanPoint b) {
    const double stretch = distance(a, b).value();
    return {(b.x - a.x) / stretch, (b.y - a.y) / stretch};
}

} // namespace

WalkLine::WalkLine(const Walk& walk) {
    for (const PlanPoint point : walk.line) {
        const double stretch = line_.empty() ? 0 : distance(line_.back(), point).value();
        if (!line_.empty() && stretch <= 0) continue;
        stations_.push_back(line_.empty() ? 0 : stations_.back() + stretch);
        line_.push_back(point);
    }
}

WalkSlot WalkLine::beside(double along, int side, double off) const {
    if (line_.size() < 2) return {line_.empty() ? PlanPoint{} : line_.front(), along, side, 0};
    const auto after = std::lower_bound(stations_.begin() + 1, stations_.end() - 1, along);
    const auto i = static_cast<std::size_t>(after - stations_.begin());
    const PlanPoint a = line_[i - 1];
    const PlanPoint d = direction(a, line_[i]);
    const double rest = along - stations_[i - 1];
    return {{a.x + rest * d.x - side * off * d.y, a.y + rest * d.y + side * off * d.x}, along, side, 0};
}

WalkSlot WalkLine::at_corner(std::size_t corner, int side, double off) const {
    const PlanPoint here = line_[corner];
    const PlanPoint in = direction(line_[corner - 1], here);
    const PlanPoint out = direction(here, line_[corner + 1]);
    const double dx = -side * (in.y + out.y);
    const double dy = side * (in.x + out.x);
    const double size = std::hypot(dx, dy); // twice the cosine of half the turn
    if (size < 1e-9) return {here, stations_[corner], side, 0};
    const double mitre = off * std::min(longest_mitre, 2 / size) / size;
    return {{here.x + dx * mitre, here.y + dy * mitre}, stations_[corner], side, 0};
}

} // namespace rillwatt
