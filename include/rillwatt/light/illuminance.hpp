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

/// Points of a list that follow each other and lie near each other.
struct PointBlock {
    std::size_t begin = 0;
    std::size_t end = 0;
    PlanBox box;
};

/// All points of a list in blocks of a few dozen, none of them wider than a few metres.
std::vector<PointBlock> blocks_of(const std::vector<SpacePoint>& points);

/// Adds what one light gives to each point of a block, walls counted. `lux` must have its size.
void add_light(const PlacedLight& light, const Obstacles& obstacles, LitPoints& target,
               const PointBlock& block);

/// Adds what one light gives to each point, walls counted.
void add_light(const PlacedLight& light, const Obstacles& obstacles, LitPoints& target);

/// Sets the lux of every point from all lights of the scene, however far. Of many points and lights:
/// `SceneIndex`.
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
