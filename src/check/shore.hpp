#pragma once

#include "rillwatt/quantity/point.hpp"
#include "rillwatt/site/site.hpp"

namespace rillwatt {

/// Plan distance from a point to the nearest edge of an area, from inside or outside.
Metres distance_to_edge(const Area& area, PlanPoint point);

/// How much of the straight line between two points lies inside an area.
Metres length_inside(const Area& area, PlanPoint from, PlanPoint to);

} // namespace rillwatt
