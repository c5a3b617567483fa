#pragma once

#include "rillwatt/layout/plan_index.hpp"
#include "rillwatt/light/light_scene.hpp"

#include <cstddef>
#include <vector>

namespace rillwatt {

/// The faces of a site's falls by where they are. It reads the site, which must outlive it.
class FallsIndex {
  public:
    explicit FallsIndex(const Site& site);

    /// Falls whose face lies in a box, in file order.
    std::vector<const Falls*> near(const PlanBox& box) const;

    /// Metres above grade of the top of the highest.
    double top() const { return top_; }

  private:
    const Site* site_;
    PlanIndex faces_;
    double top_ = 0;
};

/// Share of a light's lumens that goes above level and meets neither a falls face nor a wall: light for the
/// sky. Nothing farther than 200 m is met. Light that leaves still water is followed as it bends. Summed over
/// a mesh of directions round the axis.
double wasted_upward(const Obstacles& obstacles, const FallsIndex& falls, const PlacedLight& light);

} // namespace rillwatt
