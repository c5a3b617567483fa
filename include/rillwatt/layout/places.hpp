#pragma once

#include "rillwatt/site/site.hpp"

#include <optional>

namespace rillwatt {

/// Whether a point lies inside an area's outline or on it.
bool covers(const Area& area, PlanPoint point);

/// The water area a point lies in (on the outline counts as inside), or null.
const Area* water_at(const Site& site, PlanPoint point);

/// Whether a fixture stands in water: as written, else by the plan, else not.
bool in_water(const Site& site, const Fixture& fixture);

/// Plan distance from a point to the nearest water outline; 0 inside. Empty when the site has no water area.
std::optional<Metres> distance_to_water(const Site& site, PlanPoint point);

} // namespace rillwatt
