#include <fmt/format.h>

#include "plan_drawing.hpp"
#include "walk_outlines.hpp"

namespace rillwatt {

std::string drawn_outlines(const PlanDrawing& plan) {
    std::string edges;
    std::string water;
    for (const Area* area : areas_from_below(plan.site)) {
        const std::string points = points_text(plan.sheet.at(area->outline));
        edges += fmt::format("<polygon class=\"rw-{}\" points=\"{}\"/>\n", area_class(area->kind), points);
        if (area->kind == AreaKind::water)
            water += fmt::format(
                "<polygon class=\"rw-hatch\" fill=\"url(#rw-hatch-water)\" points=\"{}\"/>\n", points);
    }
    std::vector<DrawnWalk> walks;
    for (const Walk& walk : plan.site.walks)
        if (walk.line.size() >= 2)
            walks.push_back({plan.sheet.at(walk.line), walk.width.value() * plan.sheet.pixels_per_metre});
    return "<g class=\"rw-outline\" pointer-events=\"none\">\n" + edges +
           "</g>\n<g pointer-events=\"none\">\n" + water + "</g>\n" +
           walk_outlines(walks, plan.sheet.frame, "rw-plan-walks", "class=\"rw-walk-lit\"");
}

} // namespace rillwatt
