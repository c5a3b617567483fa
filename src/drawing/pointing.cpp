#include "pointing.hpp"

#include <cmath>
#include <numbers>

namespace rillwatt {

double bearing_degrees(PlanPoint from, PlanPoint to) {
    return std::atan2(to.y - from.y, to.x - from.x) * 180 / std::numbers::pi;
}

namespace {

constexpr double up_the_sheet = 90;

} // namespace

double pointing_degrees(const Fixture& fixture) {
    if (fixture.aim.at && fixture.at) return bearing_degrees(*fixture.at, on_plan(*fixture.aim.at));
    return fixture.aim.bearing ? fixture.aim.bearing->value() : up_the_sheet;
}

double looking_degrees(const Site& site, const Viewpoint& viewpoint) {
    if (viewpoint.looks_at.empty()) return up_the_sheet;
    for (const Falls& falls : site.falls)
        if (falls.id == viewpoint.looks_at.front())
            return bearing_degrees(viewpoint.at, {(falls.lip_left.x + falls.lip_right.x) / 2,
                                                  (falls.lip_left.y + falls.lip_right.y) / 2});
    return up_the_sheet;
}

} // namespace rillwatt
