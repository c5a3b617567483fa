#pragma once

#include "rillwatt/site/site.hpp"

namespace rillwatt {

/// The way from one point to another on the plan, in degrees: 0 = +x, 90 = +y.
double bearing_degrees(PlanPoint from, PlanPoint to);

/// Where a light is aimed on the plan; up the sheet where the file does not say.
double pointing_degrees(const Fixture& fixture);

/// Where a viewpoint looks: at the first of the falls that it names, else up the sheet.
double looking_degrees(const Site& site, const Viewpoint& viewpoint);

} // namespace rillwatt
