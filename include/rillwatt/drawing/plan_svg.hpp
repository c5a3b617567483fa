#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/light/light_result.hpp"

#include <string>

namespace rillwatt {

/// What else goes on the plan.
struct PlanOptions {
    const LuxMap* lux = nullptr; ///< light on the ground, drawn above the areas and below walks and cables
};

/// The plan of a site to scale as one `<svg>` element: areas, walks, falls, marks, sleeves, cables along
/// their routes, every part with its label, legend, scale bar, title and cautions. Circuits and solution may
/// be empty: what was not computed is left off. Elements of a part carry `data-part` with its id.
std::string plan_svg(const Assessment& assessment, const PlanOptions& options = {});

} // namespace rillwatt
