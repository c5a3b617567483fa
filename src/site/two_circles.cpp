#include "two_circles.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt {

CircleMeeting meet(const Circle& first, const Circle& second) {
    constexpr double touching = 1e-6;
    const double apart = distance(first.centre, second.centre).value();
    const double r1 = first.radius.value();
    const double r2 = second.radius.value();
    const double gap = std::max(apart - (r1 + r2), std::abs(r1 - r2) - apart);
    if (gap > touching || apart <= touching) return {std::nullopt, Metres(std::max(gap, 0.0))};
    // `along` is measured from the first centre towards the second, `aside` at right angles to it.
    const double along = (apart * apart + r1 * r1 - r2 * r2) / (2 * apart);
    const double aside = std::sqrt(std::max(r1 * r1 - along * along, 0.0));
    const double ux = (second.centre.x - first.centre.x) / apart;
    const double uy = (second.centre.y - first.centre.y) / apart;
    const double x = first.centre.x + along * ux;
    const double y = first.centre.y + along * uy;
    return {MeetingPoints{{x - aside * uy, y + aside * ux}, {x + aside * uy, y - aside * ux}}, Metres(0)};
}

} // namespace rillwatt
