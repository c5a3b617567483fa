#pragma once

#include "rillwatt/layout/plan_index.hpp"
#include "rillwatt/light/light_scene.hpp"

#include <cstddef>
#include <vector>

namespace rillwatt {

/// The falls of a site by where they are.
class FallsIndex {
  public:
    explicit FallsIndex(const Site& site);

    /// Falls whose face a ray may meet.
    std::vector<std::size_t> along(SpacePoint from, Vector3 direction) const;

  private:
    PlanIndex faces_;
    PlanBox all_;
    double top_ = -1e300; ///< of the highest face, metres above grade
};

/// Share of a light's lumens that goes above level and meets neither a falls face nor a wall: light for the
/// sky. Light that leaves still water is followed as it bends. Summed over a mesh of directions round the
/// axis.
double wasted_upward(const Site& site, const Obstacles& obstacles, const FallsIndex& falls,
                     const PlacedLight& light);

} // namespace rillwatt
