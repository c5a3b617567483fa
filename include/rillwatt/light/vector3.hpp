#pragma once

#include "rillwatt/quantity/point.hpp"

#include <cmath>

namespace rillwatt {

/// A direction or a displacement in the garden; metres where it is a displacement.
struct Vector3 {
    double x = 0;
    double y = 0;
    double z = 0;

    friend constexpr Vector3 operator+(Vector3 a, Vector3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
    friend constexpr Vector3 operator-(Vector3 a, Vector3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
    friend constexpr Vector3 operator-(Vector3 a) { return {-a.x, -a.y, -a.z}; }
    friend constexpr Vector3 operator*(double factor, Vector3 a) {
        return {factor * a.x, factor * a.y, factor * a.z};
    }
    friend constexpr bool operator==(Vector3, Vector3) = default;
};

constexpr double dot(Vector3 a, Vector3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }

constexpr Vector3 cross(Vector3 a, Vector3 b) {
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

inline double length(Vector3 a) { return std::sqrt(dot(a, a)); }

/// The same direction with length 1. The vector must not be zero.
inline Vector3 unit(Vector3 a) { return (1 / length(a)) * a; }

/// From `a` to `b`.
constexpr Vector3 from_to(SpacePoint a, SpacePoint b) { return {b.x - a.x, b.y - a.y, b.z - a.z}; }

constexpr SpacePoint moved(SpacePoint p, Vector3 by) { return {p.x + by.x, p.y + by.y, p.z + by.z}; }

inline constexpr Vector3 straight_up{0, 0, 1};
inline constexpr double pi = 3.14159265358979323846;
inline constexpr double degree = pi / 180; ///< radians in one degree

} // namespace rillwatt
