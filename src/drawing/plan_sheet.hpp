#pragma once

#include "rillwatt/check/assessment.hpp"

#include "svg_parts.hpp"
#include <string>
#include <vector>

namespace rillwatt {

/// Where things go on the plan's sheet: the drawing frame to scale, a column of notes at its right.
struct PlanSheet {
    double pixels_per_metre = 10;
    PlanPoint low;  ///< lower left corner of what the frame shows, in metres
    PlanPoint high; ///< upper right corner
    SheetBox frame;
    SheetBox column;
    double width = 0;
    double height = 0;

    SheetPoint at(PlanPoint p) const {
        return {frame.x + (p.x - low.x) * pixels_per_metre,
                frame.bottom() - (p.y - low.y) * pixels_per_metre};
    }
    std::vector<SheetPoint> at(const std::vector<PlanPoint>& points) const {
        std::vector<SheetPoint> out;
        for (const PlanPoint p : points)
            out.push_back(at(p));
        return out;
    }
};

/// A sheet that shows all that has a place on the site; its height is that of the frame at least.
PlanSheet plan_sheet(const Site& site, const SiteLengths& lengths);

/// Distance between grid lines, a round number of site units, in metres; lines at least `pixels` apart.
double round_step(double pixels_per_metre, LengthUnit unit, double pixels);

/// `data-metre`: units of the drawing to a metre; `data-origin`: where the plan's 0, 0 lies. For whoever lays
/// something over a drawing.
std::string scale_attributes(const PlanSheet& sheet);

/// Metres in one site unit.
double unit_metres(LengthUnit unit);

} // namespace rillwatt
