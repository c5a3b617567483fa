#include "places_beside.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

constexpr double set_backs[] = {0.2, 0.35, 0.5, 0.7}; ///< metres off the edge, common practice 0.15 to 0.3
constexpr double short_walk = 10;                     ///< metres: up to here the mesh is finer
constexpr double long_walk = 40;                      ///< metres: from here on two set-backs do
constexpr int most_stations = 10000;

/// Whole feet or quarter metres, half of it on short walks, more on very long ones.
double step_along(double length, LengthUnit unit) {
    double step = unit == LengthUnit::feet ? metres_per_foot : 0.25;
    if (length <= short_walk) step /= 2;
    while (length / step > most_stations)
        step *= 2;
    return step;
}

/// Every one of them on short walks, every other one on long ones.
std::vector<double> backs_for(double length) {
    std::vector<double> backs;
    for (std::size_t i = 0; i<std::size(set_backs); i += length> long_walk ? 2 : 1)
        backs.push_back(set_backs[i]);
    return backs;
}

} // namespace

PlacesBeside::PlacesBeside(const Workbench& bench, const Walk& walk, WaterRule water)
    : bench_(bench), walk_(walk), water_(water), line_(walk),
      step_(step_along(line_.length(), bench.site().settings.units)) {
    add_stations();
    add_corners();
    std::stable_sort(mesh_.begin(), mesh_.end(),
                     [](const WalkSlot& a, const WalkSlot& b) { return a.along < b.along; });
}

void PlacesBeside::add_if_free(WalkSlot slot, double back) {
    slot.back = back;
    slot.at = {bench_.taped(slot.at.x), bench_.taped(slot.at.y)};
    if (bench_.free_ground(slot.at, water_)) mesh_.push_back(slot);
}

void PlacesBeside::add_stations() {
    const int stations = static_cast<int>(std::floor(line_.length() / step_ + 1e-9));
    for (int k = 0; k <= stations; ++k)
        for (const int side : {1, -1})
            for (const double back : backs_for(line_.length()))
                add_if_free(line_.beside(k * step_, side, walk_.width.value() / 2 + back), back);
}

/// At a bend the edges of its two stretches leave a wedge outside: a light at its tip serves both.
void PlacesBeside::add_corners() {
    for (std::size_t corner = 1; corner + 1 < line_.corners(); ++corner)
        for (const int side : {1, -1})
            for (const double back : backs_for(line_.length()))
                add_if_free(line_.at_corner(corner, side, walk_.width.value() / 2 + back), back);
}

} // namespace rillwatt
