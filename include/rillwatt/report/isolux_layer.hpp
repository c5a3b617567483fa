#pragma once

#include "rillwatt/light/light_result.hpp"
#include "rillwatt/quantity/point.hpp"

#include <functional>
#include <string>

namespace rillwatt {

/// Where a point of the plan is on the paper, in the units of the drawing.
using OnPaper = std::function<PlanPoint(PlanPoint)>;

/// Isolux lines as one SVG group: filled bands, a line at each level and its value in lux beside it.
/// `text_size` in the units of the drawing. Empty for a map without light.
std::string isolux_layer(const LuxMap& map, const OnPaper& on_paper, double text_size);

/// The key to the bands: a small square of each colour with its value. One SVG group at the given corner.
std::string isolux_key(const LuxMap& map, PlanPoint corner, double text_size);

} // namespace rillwatt
