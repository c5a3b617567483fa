#pragma once

#include "rillwatt/site/site.hpp"

#include "plan_sheet.hpp"
#include "shapes.hpp"
#include <string_view>
#include <vector>

namespace rillwatt {

/// The areas that have an outline, those first that lie below others.
std::vector<const Area*> areas_from_below(const Site& site);

/// An area with its hatch.
Shape area_shape(const PlanSheet& sheet, const Area& area);

/// A walk with its edges and its middle; `title` is what a pointer is told.
Shape walk_shape(const PlanSheet& sheet, const Walk& walk, std::string title);

/// The lip of falls, with a comb on the side that the water falls to.
Shape falls_shape(const PlanSheet& sheet, const Falls& falls, std::string title);

/// A sleeve: the pipe's two sides, shut at its ends.
Shape sleeve_shape(const PlanSheet& sheet, const Sleeve& sleeve, std::string title);

/// Outlines of areas and walks and the waves of water, to be drawn above light that hides the ground.
/// `drawing` is its name, for its patterns and masks.
std::string ground_outlines(const PlanSheet& sheet, const Site& site, std::string_view drawing);

} // namespace rillwatt
