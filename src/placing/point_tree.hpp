#pragma once

#include "rillwatt/light/obstacles.hpp"

#include <cstdint>
#include <vector>

namespace rillwatt {

/// Finds points near a place. Points that follow one another have to lie near one another, as those of a walk
/// do: then a question takes the logarithm of their number and what it finds.
class PointTree {
  public:
    explicit PointTree(const std::vector<SpacePoint>& points);

    /// Indices of all points within `reach` metres on the plan, in order.
    std::vector<std::uint32_t> within(PlanPoint at, double reach) const;

  private:
    struct Search {
        PlanPoint at;
        double reach;
        std::vector<std::uint32_t>& found;
    };

    void build(std::size_t node, std::size_t begin, std::size_t end);
    void collect(std::size_t node, std::size_t begin, std::size_t end, const Search& search) const;

    const std::vector<SpacePoint>& points_;
    std::vector<PlanBox>
        boxes_; ///< a binary tree over the order of the points: children of n at 2n + 1, 2n + 2
};

} // namespace rillwatt
