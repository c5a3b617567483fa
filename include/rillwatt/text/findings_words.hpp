#pragma once

#include "rillwatt/check/assessment.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// "3 of them about light, which `check` leaves to `light` and `report`": why a report finds more than a
/// check. Empty when none is about light.
std::string about_light_text(const std::vector<Finding>& findings);

/// Where light is judged, for a check that does not; empty where it was, or where nothing is lit.
std::string light_elsewhere_text(const Assessment& assessment);

} // namespace rillwatt
