#include "walk_outlines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

constexpr double edge_width = 1.2;

/// Beyond its ends a bed lets nothing of the edge show, whose own ends would leave a hair there.
std::vector<SheetPoint> past_its_ends(std::vector<SheetPoint> line) {
    constexpr double past = 1;
    const auto move = [](SheetPoint& end, SheetPoint next) {
        const double length = std::max(std::hypot(end.x - next.x, end.y - next.y), 1e-9);
        end = {end.x + (end.x - next.x) / length * past, end.y + (end.y - next.y) / length * past};
    };
    if (line.size() < 2) return line;
    move(line.front(), line[1]);
    move(line.back(), line[line.size() - 2]);
    return line;
}

std::string band(const DrawnWalk& walk, double width, std::string_view attributes) {
    return fmt::format("<polyline {} stroke-width=\"{}\" points=\"{}\"/>\n", attributes, coordinate(width),
                       points_text(walk.line));
}

} // namespace

std::string walk_outlines(const std::vector<DrawnWalk>& walks, const SheetBox& frame, std::string_view mask) {
    if (walks.empty()) return "";
    std::string edges;
    std::string beds;
    for (const DrawnWalk& walk : walks) {
        edges += band(walk, walk.width + 2 * edge_width, "class=\"rw-walk-lit\"");
        beds += band({past_its_ends(walk.line), walk.width}, walk.width,
                     "fill=\"none\" stroke=\"#000\" stroke-linejoin=\"round\"");
    }
    // The room of the mask is given in full: that of a straight walk's own box would have no width.
    const std::string room =
        fmt::format("x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"", coordinate(frame.x), coordinate(frame.y),
                    coordinate(frame.width), coordinate(frame.height));
    return fmt::format("<mask id=\"{0}\" maskUnits=\"userSpaceOnUse\" {1}><rect {1} fill=\"#fff\"/>\n{2}"
                       "</mask>\n<g mask=\"url(#{0})\" pointer-events=\"none\">\n{3}</g>\n",
                       mask, room, beds, edges);
}

} // namespace rillwatt
