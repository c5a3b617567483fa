#pragma once

#include "rillwatt/light/light_scene.hpp"

#include <algorithm>
#include <vector>

namespace rillwatt {

/// What one light gives to a point counts from here up: a tenth of what a clear sky without a moon gives the
/// ground (from memory: about 0.001 lx). Common practice, no source.
inline constexpr double negligible_lux = 1e-4;

/// Heights that points to be lit lie between, in metres above grade. A new one holds none.
struct HeightRange {
    double low = 1e300;
    double high = -1e300;

    void include(double z) {
        low = std::min(low, z);
        high = std::max(high, z);
    }
    bool empty() const { return high < low; }
};

HeightRange heights_of(const std::vector<SpacePoint>& points);

/// How far from a light on the plan, in metres, points between these heights lie that it may give more than
/// `negligible_lux`: on level planes that face up, or on planes of any direction. Farther away it gives none
/// of them more, as its distribution, its axis and the height between prove. Negative: nowhere.
double reach_on_level(const PlacedLight& light, const HeightRange& heights);
double reach_on_any_plane(const PlacedLight& light, const HeightRange& heights);

} // namespace rillwatt
