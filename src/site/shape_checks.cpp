#include "shape_checks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace rillwatt {
namespace {

constexpr double degrees_per_radian = 57.29577951308232;

/// Twice the enclosed area, by the shoelace formula about the first point.
double doubled_area(const std::vector<PlanPoint>& outline) {
    double sum = 0;
    for (std::size_t i = 1; i + 1 < outline.size(); ++i) {
        const PlanPoint a = outline[i];
        const PlanPoint b = outline[i + 1];
        const PlanPoint o = outline[0];
        sum += (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
    }
    return sum;
}

/// Twice the area of a triangle: positive when it is walked counterclockwise.
double turn(PlanPoint a, PlanPoint b, PlanPoint c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

struct Edge {
    PlanPoint a;
    PlanPoint b;
    std::size_t number; ///< from point `number` to the next, counted from 1

    double left() const { return std::min(a.x, b.x); }
    double right() const { return std::max(a.x, b.x); }
};

/// Whether two edges cut through each other; touching, or sharing a stretch, is not crossing.
bool cross(const Edge& e, const Edge& f) {
    const double a = turn(e.a, e.b, f.a);
    const double b = turn(e.a, e.b, f.b);
    const double c = turn(f.a, f.b, e.a);
    const double d = turn(f.a, f.b, e.b);
    constexpr double rounding = 1e-12; // square metres
    return a * b < 0 && c * d < 0 &&
           std::min({std::abs(a), std::abs(b), std::abs(c), std::abs(d)}) > rounding;
}

/// The first crossing found by looking at edges from left to right, each with those that begin within its
/// width.
std::optional<std::pair<std::size_t, std::size_t>> crossing_edges(const std::vector<PlanPoint>& outline) {
    std::vector<Edge> edges;
    for (std::size_t i = 0; i < outline.size(); ++i)
        edges.push_back({outline[i], outline[(i + 1) % outline.size()], i + 1});
    std::sort(edges.begin(), edges.end(), [](const Edge& e, const Edge& f) { return e.left() < f.left(); });
    for (std::size_t i = 0; i < edges.size(); ++i)
        for (std::size_t j = i + 1; j < edges.size() && edges[j].left() <= edges[i].right(); ++j)
            if (cross(edges[i], edges[j])) return std::minmax(edges[i].number, edges[j].number);
    return std::nullopt;
}

} // namespace

void check_line(ValueReader& reader, int line, const std::vector<PlanPoint>& points) {
    for (std::size_t i = 1; i < points.size(); ++i)
        if (points[i] == points[i - 1])
            reader.error(line, fmt::format("points {} and {} are the same", i, i + 1),
                         "each point apart from the one before");
}

void check_outline(ValueReader& reader, int line, std::vector<PlanPoint>& outline) {
    if (outline.empty()) return;
    if (outline.size() > 3 && outline.front() == outline.back()) outline.pop_back();
    check_line(reader, line, outline);
    constexpr double least_square_metres = 1e-6;
    if (std::abs(doubled_area(outline)) < 2 * least_square_metres)
        reader.error(line, "an outline without an inside", "at least three points that are not on one line");
    if (const auto crossing = crossing_edges(outline))
        reader.error(line,
                     fmt::format("an outline that crosses itself: its edges from points {} and {}",
                                 crossing->first, crossing->second),
                     "points in their order round the area");
}

Degrees full_circle(Degrees bearing) {
    const double rest = std::fmod(bearing.value(), 360);
    return Degrees(rest < 0 ? rest + 360 : rest);
}

Degrees facing_of_lip(PlanPoint left, PlanPoint right) {
    // From left to right, turned a quarter clockwise, is the way out towards whoever looks at the falls.
    const double dx = right.x - left.x;
    const double dy = right.y - left.y;
    return full_circle(Degrees(std::atan2(-dx, dy) * degrees_per_radian));
}

void check_facing(ValueReader& reader, int line, Degrees typed, Degrees of_lip) {
    constexpr double widest = 45;
    const double turn = full_circle(Degrees(typed.value() - of_lip.value())).value();
    const double off = std::min(turn, 360 - turn);
    if (off <= widest + 1e-9) return;
    reader.error(line, fmt::format("`faces` is {}, {:.0f} degrees off the lip", typed.value(), off),
                 fmt::format("within 45 degrees of {:.0f}, where a lip from left to right for someone in "
                             "front of the falls faces",
                             of_lip.value()));
}

} // namespace rillwatt
