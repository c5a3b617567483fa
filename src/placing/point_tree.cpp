#include "point_tree.hpp"

#include <cmath>

namespace rillwatt {
namespace {

constexpr std::size_t leaf = 16; ///< points that share one box

bool apart(const PlanBox& box, PlanPoint at, double reach) {
    return at.x + reach < box.x_low || at.x - reach > box.x_high || at.y + reach < box.y_low ||
           at.y - reach > box.y_high;
}

} // namespace

PointTree::PointTree(const std::vector<SpacePoint>& points) : points_(points) { build(0, 0, points.size()); }

void PointTree::build(std::size_t node, std::size_t begin, std::size_t end) {
    if (node >= boxes_.size()) boxes_.resize(node + 1);
    PlanBox box;
    for (std::size_t i = begin; i < end; ++i)
        box.include(points_[i].x, points_[i].y);
    boxes_[node] = box;
    if (end - begin <= leaf) return;
    const std::size_t middle = begin + (end - begin) / 2;
    build(2 * node + 1, begin, middle);
    build(2 * node + 2, middle, end);
}

void PointTree::collect(std::size_t node, std::size_t begin, std::size_t end, const Search& search) const {
    if (begin == end || apart(boxes_[node], search.at, search.reach)) return;
    if (end - begin > leaf) {
        const std::size_t middle = begin + (end - begin) / 2;
        collect(2 * node + 1, begin, middle, search);
        collect(2 * node + 2, middle, end, search);
        return;
    }
    for (std::size_t i = begin; i < end; ++i)
        if (std::hypot(points_[i].x - search.at.x, points_[i].y - search.at.y) <= search.reach)
            search.found.push_back(static_cast<std::uint32_t>(i));
}

std::vector<std::uint32_t> PointTree::within(PlanPoint at, double reach) const {
    std::vector<std::uint32_t> found;
    collect(0, 0, points_.size(), {at, reach, found});
    return found;
}

} // namespace rillwatt
