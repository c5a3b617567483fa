#pragma once

#include "rillwatt/check/assessment.hpp"

#include <string>

namespace rillwatt {

/// The isolux picture alone: areas, walks, falls, lights and isolux lines to scale, one `<svg>` element.
/// Empty where no light was computed.
std::string light_plan_svg(const Assessment& assessment);

} // namespace rillwatt
