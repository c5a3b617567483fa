#include "rillwatt/layout/places.hpp"

#include "outline_geometry.hpp"
#include <algorithm>

namespace rillwatt {

bool covers(const Area& area, PlanPoint point) {
    return !area.outline.empty() && locate(area.outline, point) != Location::outside;
}

const Area* water_at(const Site& site, PlanPoint point) {
    for (const Area& area : site.areas)
        if (area.kind == AreaKind::water && covers(area, point)) return &area;
    return nullptr;
}

bool in_water(const Site& site, const Fixture& fixture) {
    if (fixture.in_water) return *fixture.in_water;
    return fixture.at && water_at(site, *fixture.at) != nullptr;
}

std::optional<Metres> distance_to_water(const Site& site, PlanPoint point) {
    std::optional<Metres> least;
    for (const Area& area : site.areas) {
        if (area.kind != AreaKind::water || area.outline.empty()) continue;
        const Metres away(covers(area, point) ? 0.0 : distance_to_outline(area.outline, point));
        if (!least || away < *least) least = away;
    }
    return least;
}

} // namespace rillwatt
