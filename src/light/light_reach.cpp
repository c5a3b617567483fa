// Bounds on the light that a lamp gives beyond a distance d on the plan. With I the greatest candela among
// the directions that lead there and H the greatest height between, E = I cos ξ / r² is at most I H / d³ on a
// level plane (cos ξ = h / r, h <= H, r >= d) and at most I / d² on any.
//
// Out of still water, with depth z, height h above it and d = z tan θw + h tan θa, the flux tube of
// water_surface.cpp gives E = I T sin θw cos²θa / (d h n cos θw) at most, its spread being at least that of
// the air. Fresnel's T is at most 2 cos θa (n + 1/n) / cos θw, sin θw at most 1/n, and cos θa at most h / (d
// - z tan θw): E <= I K h² / (d (d - z / (n c))³) with c = cos θw at its least and K = 2 (n + 1/n) / (n c)².
#include "rillwatt/light/light_reach.hpp"

#include "rillwatt/light/water_surface.hpp"

#include <cmath>
#include <functional>

namespace rillwatt {
namespace {

constexpr double nearest_bound = 0.01; ///< metres: below it nothing is worth telling apart
constexpr double farthest = 1e7;       ///< metres
constexpr double fineness = 1.02;

/// Angles above level, in radians, of the rays that leave a light for somewhere.
struct Slopes {
    double low = 0;
    double high = 0;
};

/// Slopes to points at least that far off, down to `below` and up to `above` metres from the light.
Slopes slopes_beyond(double d, double below, double above) {
    return {-std::atan2(std::max(0.0, below), d), std::atan2(std::max(0.0, above), d)};
}

double gap(double value, const Slopes& range) {
    return std::max({0.0, range.low - value, value - range.high});
}

/// Greatest candela among all rays of these slopes, whatever their bearing.
double greatest_candela(const PlacedLight& light, const Slopes& slopes) {
    const double axis = std::asin(std::clamp(light.pose.axis.z, -1.0, 1.0));
    return light.photometry->distribution.peak_between(gap(axis, slopes), pi - gap(-axis, slopes));
}

double bound_in_one_medium(const PlacedLight& light, double d, const HeightRange& heights) {
    const Slopes slopes = slopes_beyond(d, light.pose.at.z - heights.low, heights.high - light.pose.at.z);
    return light.factor * greatest_candela(light, slopes) / (d * d);
}

double bound_on_level(const PlacedLight& light, double d, double below) {
    return light.factor * greatest_candela(light, slopes_beyond(d, below, 0)) * below / (d * d * d);
}

double bound_out_of_water(const PlacedLight& light, double d, double height) {
    constexpr double n = water_index;
    const double steepest = 1 / std::sqrt(n * n - 1); // tan θw at the critical angle: 1 / (n c)
    const double beyond = d - (*light.water_level - light.pose.at.z) * steepest;
    if (beyond <= 0) return 1e300;
    return light.factor * light.photometry->distribution.peak() * 2 * (n + 1 / n) * steepest * steepest *
           height * height / (d * beyond * beyond * beyond);
}

/// Where a bound that falls with the distance becomes negligible, a little beyond.
double where_negligible(const std::function<double(double)>& bound) {
    double near = 0;
    double far = nearest_bound;
    while (bound(far) > negligible_lux && far < farthest) {
        near = far;
        far *= 2;
    }
    while (near > 0 && far > near * fineness) {
        const double middle = std::sqrt(near * far);
        (bound(middle) > negligible_lux ? near : far) = middle;
    }
    return far;
}

bool dark(const PlacedLight& light) { return light.factor <= 0 || light.photometry->distribution.dark(); }

} // namespace

HeightRange heights_of(const std::vector<SpacePoint>& points) {
    HeightRange range;
    for (const SpacePoint& p : points)
        range.include(p.z);
    return range;
}

double reach_on_level(const PlacedLight& light, const HeightRange& heights) {
    const double below = light.pose.at.z - heights.low;
    if (dark(light) || heights.empty() || below <= 0) return -1; // what comes from below meets its back
    return where_negligible([&](double d) { return bound_on_level(light, d, below); });
}

double reach_on_any_plane(const PlacedLight& light, const HeightRange& heights) {
    if (dark(light) || heights.empty()) return -1;
    double reach = -1;
    const bool wet = light.water_level.has_value();
    if (!wet || heights.low <= *light.water_level)
        reach = where_negligible([&](double d) { return bound_in_one_medium(light, d, heights); });
    if (wet && heights.high > *light.water_level) {
        const double height = heights.high - *light.water_level;
        reach =
            std::max(reach, where_negligible([&](double d) { return bound_out_of_water(light, d, height); }));
    }
    return reach;
}

} // namespace rillwatt
