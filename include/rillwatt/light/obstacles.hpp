#pragma once

#include "rillwatt/light/vector3.hpp"
#include "rillwatt/site/site.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace rillwatt {

/// A box on the plan.
struct PlanBox {
    double x_low = 1e300;
    double y_low = 1e300;
    double x_high = -1e300;
    double y_high = -1e300;

    void include(double x, double y);
};

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

    /// Walls that lines inside the box can meet.
    std::vector<Wall> near(const PlanBox& box) const;

    /// The area that stands between two points, when one does. Areas listed in `ignored` do not count.
    std::optional<std::size_t> blocking_area(SpacePoint from, SpacePoint to,
                                             const std::vector<std::size_t>& ignored = {}) const;

    /// Whether one of these walls, which must be of this garden, stands between two points.
    bool blocked(const std::vector<Wall>& walls, SpacePoint from, SpacePoint to) const;

  private:
    bool wall_between(const Wall& wall, SpacePoint from, SpacePoint to) const;
    bool passes_through(std::size_t area, SpacePoint from, SpacePoint to) const;

    std::vector<Wall> walls_;
    std::vector<std::vector<PlanPoint>> outlines_; ///< by area index; empty for areas without height
    std::vector<double> heights_;
};

} // namespace rillwatt
