#include "rillwatt/quantity/plan_geometry.hpp"

#include <algorithm>
#include <limits>
#include <numbers>

namespace rillwatt {

PlanPoint nearest_on_segment(PlanPoint a, PlanPoint b, PlanPoint p) {
    const PlanPoint along = b - a;
    const double length_squared = dot(along, along);
    if (length_squared == 0) return a;
    const double t = std::clamp(dot(p - a, along) / length_squared, 0.0, 1.0);
    return a + t * along;
}

SegmentCrossing proper_crossing(PlanPoint a, PlanPoint b, PlanPoint c, PlanPoint d) {
    const PlanPoint ab = b - a;
    const PlanPoint cd = d - c;
    const double reach_ab = touch_tolerance * norm(ab);
    const double reach_cd = touch_tolerance * norm(cd);
    const double side_c = cross(ab, c - a);
    const double side_d = cross(ab, d - a);
    if (std::abs(side_c) <= reach_ab || std::abs(side_d) <= reach_ab || (side_c > 0) == (side_d > 0))
        return {};
    const double side_a = cross(cd, a - c);
    const double side_b = cross(cd, b - c);
    if (std::abs(side_a) <= reach_cd || std::abs(side_b) <= reach_cd || (side_a > 0) == (side_b > 0))
        return {};
    return {true, c + (side_c / (side_c - side_d)) * cd};
}

Location locate(const std::vector<PlanPoint>& outline, PlanPoint p) {
    bool inside = false;
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
        const PlanPoint a = outline[j];
        const PlanPoint b = outline[i];
        if (same_place(nearest_on_segment(a, b, p), p)) return Location::on_outline;
        if (crossed_to_the_right(a, b, p)) inside = !inside;
    }
    return inside ? Location::inside : Location::outside;
}

double distance_to_line(const std::vector<PlanPoint>& line, PlanPoint p) {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 1; i < line.size(); ++i)
        least = std::min(least, distance_to_segment(line[i - 1], line[i], p));
    return least;
}

double distance_to_outline(const std::vector<PlanPoint>& outline, PlanPoint p) {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++)
        least = std::min(least, distance_to_segment(outline[j], outline[i], p));
    return least;
}

std::vector<PlanPoint> without_repeats(const std::vector<PlanPoint>& outline) {
    std::vector<PlanPoint> out;
    for (const PlanPoint p : outline)
        if (out.empty() || !same_place(out.back(), p)) out.push_back(p);
    while (out.size() > 1 && same_place(out.front(), out.back()))
        out.pop_back();
    return out;
}

namespace {

/// How far anticlockwise from one direction another lies, from 0 to a full turn.
double turn_between(PlanPoint from, PlanPoint to) {
    const double turn = std::atan2(cross(from, to), dot(from, to));
    return turn < 0 ? turn + 2 * std::numbers::pi : turn;
}

/// Whether an outline that comes to one place twice, at its points i and k, crosses itself there. Two ways
/// that only touch, or run along each other, do not.
bool crosses_at(const std::vector<PlanPoint>& outline, std::size_t i, std::size_t k) {
    const std::size_t n = outline.size();
    const PlanPoint here = outline[i];
    const PlanPoint out = outline[(i + 1) % n] - here;
    const double span = turn_between(out, outline[(i + n - 1) % n] - here);
    const double a = turn_between(out, outline[(k + n - 1) % n] - here);
    const double b = turn_between(out, outline[(k + 1) % n] - here);
    constexpr double along = 1e-9;
    const auto between = [&](double turn) { return turn > along && turn < span - along; };
    const auto beyond = [&](double turn) {
        return turn > span + along && turn < 2 * std::numbers::pi - along;
    };
    return (between(a) && beyond(b)) || (between(b) && beyond(a));
}

/// Whether an outline comes to one place twice, by a sweep from left to right.
bool repeats_a_place(std::vector<PlanPoint> points) {
    std::sort(points.begin(), points.end(), [](PlanPoint a, PlanPoint b) { return a.x < b.x; });
    for (std::size_t i = 0; i < points.size(); ++i)
        for (std::size_t k = i + 1; k < points.size() && points[k].x - points[i].x <= touch_tolerance; ++k)
            if (same_place(points[i], points[k])) return true;
    return false;
}

/// Walks the loop between the two visits of such a place the other way round: the outline then only touches
/// itself there, and keeps what it encloses on one hand.
void untwist(std::vector<PlanPoint>& outline) {
    if (!repeats_a_place(outline)) return;
    for (std::size_t i = 0; i < outline.size(); ++i)
        for (std::size_t k = i + 1; k < outline.size(); ++k)
            if (same_place(outline[i], outline[k]) && crosses_at(outline, i, k))
                std::reverse(outline.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                             outline.begin() + static_cast<std::ptrdiff_t>(k));
}

} // namespace

std::vector<PlanPoint> tidy_outline(const std::vector<PlanPoint>& outline) {
    std::vector<PlanPoint> tidy = without_repeats(outline);
    if (tidy.size() < 3) return {};
    untwist(tidy);
    double twice_area = 0;
    for (std::size_t i = 0, j = tidy.size() - 1; i < tidy.size(); j = i++)
        twice_area += cross(tidy[j] - tidy[0], tidy[i] - tidy[0]);
    if (std::abs(twice_area) <= touch_tolerance * touch_tolerance) return {};
    if (twice_area < 0) std::reverse(tidy.begin(), tidy.end());
    return tidy;
}

} // namespace rillwatt
