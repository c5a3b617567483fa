#pragma once

#include "rillwatt/quantity/point.hpp"

// Points, segments and outlines on the plan: the one place that all floors ask.

#include <cmath>
#include <vector>

namespace rillwatt {

/// Two points of the plan nearer than this are the same point, in metres. A hundredth of a millimetre: far
/// below what a tape measures, far above what arithmetic on garden-sized numbers loses.
constexpr double touch_tolerance = 1e-5;

constexpr PlanPoint operator-(PlanPoint a, PlanPoint b) { return {a.x - b.x, a.y - b.y}; }
constexpr PlanPoint operator+(PlanPoint a, PlanPoint b) { return {a.x + b.x, a.y + b.y}; }
constexpr PlanPoint operator*(double factor, PlanPoint p) { return {factor * p.x, factor * p.y}; }

constexpr double dot(PlanPoint a, PlanPoint b) { return a.x * b.x + a.y * b.y; }

/// Positive when `b` turns left from `a`.
constexpr double cross(PlanPoint a, PlanPoint b) { return a.x * b.y - a.y * b.x; }

/// Gardens neither overflow nor underflow a square: no need for the slower std::hypot.
inline double norm(PlanPoint a) { return std::sqrt(dot(a, a)); }

inline bool same_place(PlanPoint a, PlanPoint b) {
    return dot(b - a, b - a) <= touch_tolerance * touch_tolerance;
}

/// The point of a segment that is nearest to `p`.
PlanPoint nearest_on_segment(PlanPoint a, PlanPoint b, PlanPoint p);

/// Distance from a point to a segment, in metres.
inline double distance_to_segment(PlanPoint a, PlanPoint b, PlanPoint p) {
    return norm(nearest_on_segment(a, b, p) - p);
}

/// Distance from a point to the nearest piece of a line of several points, in metres; infinite where there is
/// no piece.
double distance_to_line(const std::vector<PlanPoint>& line, PlanPoint p);

/// Where two segments cross properly, each well inside the other.
struct SegmentCrossing {
    bool crosses = false;
    PlanPoint at;
};
SegmentCrossing proper_crossing(PlanPoint a, PlanPoint b, PlanPoint c, PlanPoint d);

/// Whether a level line from `p` to the right crosses a segment: an odd number of crossings with an outline
/// means inside.
inline bool crossed_to_the_right(PlanPoint a, PlanPoint b, PlanPoint p) {
    return (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x);
}

enum class Location { outside, on_outline, inside };

/// Where a point lies; within the touch tolerance of the outline it is on it.
Location locate(const std::vector<PlanPoint>& outline, PlanPoint p);

/// Distance from a point to the nearest point of the outline, in metres.
double distance_to_outline(const std::vector<PlanPoint>& outline, PlanPoint p);

/// The outline without points that repeat the one before.
std::vector<PlanPoint> without_repeats(const std::vector<PlanPoint>& outline);

/// The outline without repeated points, anticlockwise. Empty when nothing with an inside is left.
std::vector<PlanPoint> tidy_outline(const std::vector<PlanPoint>& outline);

} // namespace rillwatt
