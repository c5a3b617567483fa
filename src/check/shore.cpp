#include "shore.hpp"

#include "rillwatt/quantity/plan_geometry.hpp"

#include <algorithm>

namespace rillwatt {

Metres distance_to_edge(const Area& area, PlanPoint point) {
    return Metres(distance_to_outline(area.outline, point));
}

/// Cuts the line where it meets the outline and adds up the pieces that lie inside.
Metres length_inside(const Area& area, PlanPoint from, PlanPoint to) {
    const std::vector<PlanPoint>& outline = area.outline;
    const PlanPoint along = to - from;
    std::vector<double> cuts{0, 1};
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
        const double turn = cross(along, outline[i] - outline[j]);
        if (turn == 0) continue;
        const double share = cross(outline[j] - from, outline[i] - outline[j]) / turn;
        if (share > 0 && share < 1) cuts.push_back(share);
    }
    std::sort(cuts.begin(), cuts.end());
    double inside = 0;
    for (std::size_t k = 0; k + 1 < cuts.size(); ++k)
        if (locate(outline, from + (cuts[k] + cuts[k + 1]) / 2 * along) == Location::inside)
            inside += (cuts[k + 1] - cuts[k]) * norm(along);
    return Metres(inside);
}

} // namespace rillwatt
