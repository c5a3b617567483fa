#include "obstacle_map.hpp"
#include <algorithm>
#include <cmath>
#include <numbers>

namespace rillwatt {
namespace {

constexpr double pi = std::numbers::pi;
/// Directions nearer than this are the same, in radians.
constexpr double same_direction = 1e-7;
/// A sector must fall short of half a turn by this before a path gains anything by bending round it.
constexpr double least_bend = 1e-9;

double turn_from(double a, double b) {
    const double turn = std::fmod(b - a, 2 * pi);
    return turn < 0 ? turn + 2 * pi : turn;
}

/// How far anticlockwise the far side of the first barred sector is.
double first_far_side(const std::vector<Surroundings::Sector>& barred, double direction) {
    double nearest = 4 * pi;
    double far_side = 4 * pi;
    for (const Surroundings::Sector& sector : barred) {
        double turn = turn_from(direction, sector.from);
        if (turn > 2 * pi - same_direction) turn = 0;
        if (turn >= nearest) continue;
        nearest = turn;
        far_side = turn + sector.span;
    }
    return far_side;
}

std::vector<Surroundings::Sector> mirrored(const std::vector<Surroundings::Sector>& barred) {
    std::vector<Surroundings::Sector> out;
    for (const Surroundings::Sector& sector : barred)
        out.push_back({-(sector.from + sector.span), sector.span});
    return out;
}

} // namespace

bool Surroundings::free(double direction) const {
    return std::none_of(barred_.begin(), barred_.end(), [&](const Sector& sector) {
        const double turn = turn_from(sector.from, direction);
        if (sector.span >= 2 * pi - same_direction) return true;
        return turn > same_direction && turn < sector.span - same_direction;
    });
}

bool Surroundings::worth_turning(double direction) const {
    return first_far_side(barred_, direction) < pi - least_bend ||
           first_far_side(mirrored(barred_), -direction) < pi - least_bend;
}

bool Surroundings::is_turning_point() const {
    return std::any_of(barred_.begin(), barred_.end(),
                       [](const Sector& sector) { return sector.span < pi - least_bend; });
}

bool Surroundings::enclosed() const {
    return std::any_of(barred_.begin(), barred_.end(),
                       [](const Sector& sector) { return sector.span >= 2 * pi - same_direction; });
}

} // namespace rillwatt
