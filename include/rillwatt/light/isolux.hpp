#pragma once

#include "rillwatt/light/light_scene.hpp"

#include <vector>

namespace rillwatt {

/// Level lux on the ground of a garden on a square mesh: round every walk, falls and light, with a margin.
/// The ground near a raised walk is at that walk's height. Inside buildings there is none.
LuxMap lux_map(const Site& site, const LightScene& scene);

/// Rings round everything that has at least `lux`. Filled by the even-odd rule they leave out the darker
/// holes.
struct Isolux {
    double lux = 0;
    std::vector<std::vector<PlanPoint>> rings;
};

/// The levels that are drawn, rising: 0.5, 1, 2, 5, 10, 20, 50, 100 lx as far as the map has them.
std::vector<double> isolux_levels(const LuxMap& map);

/// Marching squares with straight interpolation; outside the map it is dark, so every ring closes.
std::vector<Isolux> isolux_lines(const LuxMap& map, const std::vector<double>& levels);

} // namespace rillwatt
