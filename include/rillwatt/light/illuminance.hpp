#pragma once

#include "rillwatt/light/light_scene.hpp"

#include <vector>

namespace rillwatt {

/// Lux from one light at a point of a plane with that unit normal, as if nothing stood between: direct light
/// only, E = I cos ξ / r², 0 from behind. A light under still water reaches points above it refracted, partly
/// reflected and weakened by the water; points under water straight. A light very near counts as a point
/// source all the same.
double unblocked_lux(const PlacedLight& light, SpacePoint point, Vector3 normal);

/// Points of one plane direction and the lux on them.
struct LitPoints {
    std::vector<SpacePoint> points;
    Vector3 normal = straight_up;
    std::vector<double> lux; ///< in the order of `points`
};

/// Adds what one light gives to each point, walls counted.
void add_light(const PlacedLight& light, const Obstacles& obstacles, LitPoints& target);

/// Sets the lux of every point from all lights of the scene.
void illuminate(const LightScene& scene, LitPoints& target);

/// Mean, least and greatest of some lux.
struct LuxSpread {
    double mean = 0;
    double least = 0;
    double greatest = 0;
    std::size_t darkest = 0; ///< index of the least
};

LuxSpread spread_of(const std::vector<double>& lux);

} // namespace rillwatt
