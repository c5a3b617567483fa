#pragma once

#include "rillwatt/quantity/quantity.hpp"

#include <cmath>

namespace rillwatt {

/// A point on the plan: x to the right, y up, both in metres.
struct PlanPoint {
    double x = 0;
    double y = 0;

    friend constexpr bool operator==(PlanPoint, PlanPoint) = default;
};

/// A point in the garden: the plan with z up, in metres above grade.
struct SpacePoint {
    double x = 0;
    double y = 0;
    double z = 0;

    friend constexpr bool operator==(SpacePoint, SpacePoint) = default;
};

inline Metres distance(PlanPoint a, PlanPoint b) { return Metres(std::hypot(b.x - a.x, b.y - a.y)); }

constexpr PlanPoint on_plan(SpacePoint p) { return {p.x, p.y}; }

} // namespace rillwatt
