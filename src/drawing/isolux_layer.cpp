#include "isolux_layer.hpp"

#include "rillwatt/light/isolux.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "drawing_style.hpp"

namespace rillwatt {

namespace {

std::string path_of(const DrawnIsolux& line) {
    std::string path;
    for (const std::vector<SheetPoint>& ring : line.rings) {
        for (std::size_t i = 0; i < ring.size(); ++i)
            path += fmt::format("{}{} {}", i == 0 ? "M" : "L", coordinate(ring[i].x), coordinate(ring[i].y));
        path += "Z";
    }
    return path;
}

} // namespace

std::vector<DrawnIsolux> drawn_isolux(const LuxMap& map, const PlanSheet& sheet) {
    std::vector<DrawnIsolux> drawn;
    for (const Isolux& line : isolux_lines(map, isolux_levels(map))) {
        drawn.push_back({line.lux, {}});
        for (const std::vector<PlanPoint>& ring : line.rings)
            drawn.back().rings.push_back(sheet.at(ring));
    }
    return drawn;
}

std::string isolux_bands(const std::vector<DrawnIsolux>& lines) {
    if (lines.empty()) return "";
    std::string out = "<g class=\"isolux\" role=\"group\" aria-label=\"Light on the ground, lux\">\n";
    for (std::size_t i = 0; i < lines.size(); ++i)
        out += fmt::format("<path class=\"{}\" d=\"{}\"><title>{} lx or more</title></path>\n", lux_class(i),
                           path_of(lines[i]), trimmed_text(lines[i].lux, 1));
    return out + "</g>\n";
}

std::string isolux_contours(const std::vector<DrawnIsolux>& lines) {
    if (lines.empty()) return "";
    std::string out = "<g class=\"isolux-lines\" pointer-events=\"none\">\n";
    for (const DrawnIsolux& line : lines)
        out += fmt::format("<path d=\"{}\"/>\n", path_of(line));
    return out + "</g>\n";
}

void add_isolux_legend(LegendFlow& legend, const LuxMap& map) {
    const std::vector<double> levels = isolux_levels(map);
    for (std::size_t i = 0; i < levels.size(); ++i)
        legend.add(
            fmt::format("<rect class=\"rw-lux-key {}\" y=\"-5\" width=\"14\" height=\"10\"/>", lux_class(i)),
            14, trimmed_text(levels[i], 1) + " lx");
}

} // namespace rillwatt
