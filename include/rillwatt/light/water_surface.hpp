#pragma once

#include <optional>

namespace rillwatt {

/// Refractive index of water at 20 C in the middle of the visible range.
inline constexpr double water_index = 1.333;

/// Share of unpolarised light that a still surface lets through, for an angle in water (radians off the plumb
/// line); the same both ways along a ray. 0 at and beyond the critical angle. Fresnel's equations.
double surface_transmittance(double angle_in_water);

/// Snell's law; empty at and beyond the critical angle.
std::optional<double> angle_in_air(double angle_in_water);

/// Intensity in air over intensity in water for the ray that leaves at `angle_in_water`, seen from far away:
/// T cos θa / (n² cos θw).
double far_intensity_ratio(double angle_in_water);

/// The one ray from a lamp under still water to a point above it.
struct RefractedRay {
    double in_water = 0;   ///< angle off the plumb line, radians
    double in_air = 0;     ///< the same above the surface
    double exit = 0;       ///< horizontal distance from the lamp to where the ray leaves the water, metres
    double path = 0;       ///< length in water, metres
    double horizontal = 0; ///< lux on a level plane facing down, for 1 cd in the direction of the ray in
                           ///< water, clear water: the flux tube T sin θw / (r dr/dθw)
};

/// `depth` of the lamp, `height` of the point above the surface, horizontal `distance` between them, all in
/// metres and depth and height above 0. There is always exactly one such ray.
RefractedRay refracted_ray(double depth, double height, double distance);

} // namespace rillwatt
