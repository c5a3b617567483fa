#include "shape_checks.hpp"

#include <fmt/format.h>

#include <cmath>

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
