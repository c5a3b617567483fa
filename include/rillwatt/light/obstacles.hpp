#pragma once

#include "rillwatt/layout/plan_index.hpp"
#include "rillwatt/light/vector3.hpp"
#include "rillwatt/site/site.hpp"

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

namespace rillwatt {

/// One side of an area that stands high enough to block light or view.
struct Wall {
    PlanPoint a;
    PlanPoint b;
    double height = 0;    ///< metres above grade
    std::size_t area = 0; ///< index into Site::areas
};

/// The walls of a garden: every side of every area with a height. Touching a wall or its corner is free;
/// going through an area is not.
class Obstacles {
  public:
    Obstacles() = default;
    explicit Obstacles(const Site& site);

    const std::vector<Wall>& walls() const { return walls_; }

    /// Metres above grade of the top of the highest.
    double top() const { return top_; }

    /// Walls that lines inside the box can meet.
    std::vector<Wall> near(const PlanBox& box) const;

    /// The area that stands between two points, when one does. Areas listed in `ignored` do not count.
    std::optional<std::size_t> blocking_area(SpacePoint from, SpacePoint to,
                                             const std::vector<std::size_t>& ignored = {}) const;

    /// Whether one of these walls, which must be of this garden, stands between two points.
    bool blocked(const std::vector<Wall>& walls, SpacePoint from, SpacePoint to) const;

    /// Whether a wall of this garden stands between two points.
    bool wall_between(const Wall& wall, SpacePoint from, SpacePoint to) const;

  private:
    bool passes_through(std::size_t area, SpacePoint from, SpacePoint to) const;

    std::vector<Wall> walls_;
    std::vector<std::vector<PlanPoint>> outlines_; ///< by area index; empty for areas without height
    std::vector<double> heights_;
    std::shared_ptr<const PlanIndex> index_; ///< of the walls
    double top_ = 0;
};

} // namespace rillwatt
