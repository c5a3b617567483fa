// Light leaving still water: Snell's law, Fresnel's equations for unpolarised light, and the flux tube.
//
// With depth z, height H, angles θw in water and θa in air, r = z tan θw + H tan θa. A cone of rays between
// θw and θw + dθw carries I sin θw dθw dφ and lands on r dr dφ, so E = I T sin θw / (r dr/dθw).
#include "rillwatt/light/water_surface.hpp"

#include <cmath>

namespace rillwatt {
namespace {

constexpr double n2 = water_index * water_index;
constexpr int most_steps = 60;

/// tan θw for a given t = tan θa.
double tangent_in_water(double t) { return t / std::sqrt(n2 + (n2 - 1) * t * t); }

/// tan θa of the ray that covers `distance`. g(t) = z tan θw + H t - D rises and is concave, so Newton's
/// steps from the left of its root never pass it.
double tangent_in_air(double depth, double height, double distance) {
    double t = distance / (height + depth / water_index);
    for (int step = 0; step < most_steps; ++step) {
        const double root = std::sqrt(n2 + (n2 - 1) * t * t);
        const double gap = depth * t / root + height * t - distance;
        const double next = t - gap / (depth * n2 / (root * root * root) + height);
        if (std::abs(next - t) <= 1e-13 * (1 + t)) return next;
        t = next;
    }
    return t;
}

double transmittance(double cosine_water, double cosine_air) {
    const double across =
        (water_index * cosine_water - cosine_air) / (water_index * cosine_water + cosine_air);
    const double along =
        (water_index * cosine_air - cosine_water) / (water_index * cosine_air + cosine_water);
    return 1 - 0.5 * (across * across + along * along);
}

} // namespace

std::optional<double> angle_in_air(double angle_in_water) {
    const double sine = water_index * std::sin(angle_in_water);
    if (sine >= 1) return {};
    return std::asin(sine);
}

double surface_transmittance(double angle_in_water) {
    const std::optional<double> above = angle_in_air(angle_in_water);
    return above ? transmittance(std::cos(angle_in_water), std::cos(*above)) : 0;
}

double far_intensity_ratio(double angle_in_water) {
    const std::optional<double> above = angle_in_air(angle_in_water);
    if (!above) return 0;
    return surface_transmittance(angle_in_water) * std::cos(*above) / (n2 * std::cos(angle_in_water));
}

RefractedRay refracted_ray(double depth, double height, double distance) {
    const double t = distance > 0 ? tangent_in_air(depth, height, distance) : 0;
    const double in_water_tangent = tangent_in_water(t);
    const double cosine_air = 1 / std::sqrt(1 + t * t);
    const double cosine_water = 1 / std::sqrt(1 + in_water_tangent * in_water_tangent);
    RefractedRay ray;
    ray.in_water = std::atan(in_water_tangent);
    ray.in_air = std::atan(t);
    ray.exit = depth * in_water_tangent;
    ray.path = depth / cosine_water;
    const double spread = depth / (cosine_water * cosine_water) +
                          height * water_index * cosine_water / (cosine_air * cosine_air * cosine_air);
    // On the axis sin θw / r tends to 1 / (z + n H), which is 1 / spread.
    const double sine_over_r = distance > 1e-9 ? in_water_tangent * cosine_water / distance : 1 / spread;
    ray.horizontal = transmittance(cosine_water, cosine_air) * sine_over_r / spread;
    return ray;
}

} // namespace rillwatt
