#pragma once

#include "rillwatt/check/assessment.hpp"

#include <string>
#include <string_view>

namespace rillwatt {

/// What else goes on the plan.
struct PlanOptions {
    /// A ready SVG group, drawn above the areas and below walks and cables. Its coordinates are the plan's:
    /// metres, x to the right, y up. Strokes need `vector-effect="non-scaling-stroke"`, and text
    /// `transform="scale(1,-1)"`, for the group is scaled and turned over as a whole.
    std::string_view overlay;
    std::string_view overlay_legend; ///< one line of legend for it; empty: none
};

/// The plan of a site to scale as one `<svg>` element: areas, walks, falls, marks, sleeves, cables along
/// their routes, every part with its label, legend, scale bar, title and cautions. Circuits and solution may
/// be empty: what was not computed is left off. Elements of a part carry `data-part` with its id.
std::string plan_svg(const Assessment& assessment, const PlanOptions& options = {});

} // namespace rillwatt
