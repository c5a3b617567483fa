#pragma once

#include "rillwatt/light/light_scene.hpp"

namespace rillwatt {

/// Share of a light's lumens that goes above level and meets neither a falls face nor a wall: light for the
/// sky. Light that leaves still water is followed as it bends. Summed over a mesh of directions round the
/// axis.
double wasted_upward(const Site& site, const Obstacles& obstacles, const PlacedLight& light);

} // namespace rillwatt
