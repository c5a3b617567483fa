#pragma once

#include "rillwatt/light/light_result.hpp"
#include "rillwatt/site/site.hpp"

#include <string>

namespace rillwatt {

/// The isolux picture alone: areas, walks, falls, lights and isolux lines to scale, one `<svg>` element.
std::string light_plan_svg(const Site& site, const LightResult& light);

} // namespace rillwatt
