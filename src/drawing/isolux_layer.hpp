#pragma once

#include "rillwatt/light/light_result.hpp"

#include "legend_flow.hpp"
#include "plan_sheet.hpp"
#include <string>
#include <vector>

namespace rillwatt {

/// A line of equal light as it lies on the paper.
struct DrawnIsolux {
    double lux = 0;
    std::vector<std::vector<SheetPoint>> rings; ///< closed: the last point joins the first
};

/// The lines of every level that the map has, faintest first. Empty for a map without light.
std::vector<DrawnIsolux> drawn_isolux(const LuxMap& map, const PlanSheet& sheet);

/// The light itself: an area filled for each level. It hides what is drawn before it.
std::string isolux_bands(const std::vector<DrawnIsolux>& lines);

/// The lines alone, to be drawn above whatever must not break them.
std::string isolux_contours(const std::vector<DrawnIsolux>& lines);

/// The colour and the value of each level.
void add_isolux_legend(LegendFlow& legend, const LuxMap& map);

} // namespace rillwatt
