#pragma once

#include "rillwatt/layout/places.hpp"
#include "rillwatt/light/illuminance.hpp"
#include "rillwatt/light/light_reach.hpp"

#include <cstddef>
#include <vector>

namespace rillwatt {

/// So many lights are few: each of them counts at every point, however far.
inline constexpr std::size_t so_few_that_all_count = 300;

/// The lights of a scene by where they are and how far they reach, and the garden's areas: what a walk, a
/// face or a viewpoint costs does not grow with the garden. It reads site and scene, which must outlive it.
class SceneIndex {
  public:
    /// For points to be lit between these heights: points outside them must not be asked for.
    SceneIndex(const Site& site, const LightScene& scene, const HeightRange& heights);

    const LightScene& scene() const { return *scene_; }
    const AreaIndex& areas() const { return areas_; }

    /// Sets the lux of every point from all lights that reach it with more than `negligible_lux` each; where
    /// lights are few, from all of them.
    void illuminate(LitPoints& target) const;

    /// Whether light from under a water surface reaches some of the points.
    bool lit_through_water(LitPoints target) const;

    /// Lights nearer to a place on the plan than so many metres, and perhaps some that are not, rising.
    std::vector<std::size_t> lights_near(PlanPoint place, double within) const;

  private:
    std::vector<std::size_t> reaching(const LitPoints& target, const PointBlock& block) const;

    const LightScene* scene_;
    AreaIndex areas_;
    PlanIndex places_;
    PlanIndex on_level_;     ///< by what they reach on level planes
    PlanIndex on_any_plane_; ///< by what they reach at all
};

/// The heights of all points of a site that light is computed at.
HeightRange lit_heights(const Site& site);

} // namespace rillwatt
