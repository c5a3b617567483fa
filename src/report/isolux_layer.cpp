#include "rillwatt/report/isolux_layer.hpp"

#include "rillwatt/light/isolux.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace rillwatt {

namespace {

/// Warm steps from the faintest level to the brightest.
constexpr const char* band_colours[] = {"#fff6d8", "#ffedb0", "#ffe08a", "#fecb5c",
                                        "#f8b133", "#ec9417", "#d67a0b", "#b86206"};
constexpr std::size_t colour_count = std::size(band_colours);
constexpr const char* line_colour = "#8a5a00";

const char* colour_of(std::size_t level) { return band_colours[std::min(level, colour_count - 1)]; }

std::string path_of(const Isolux& line, const OnPaper& on_paper) {
    std::string path;
    for (const std::vector<PlanPoint>& ring : line.rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const PlanPoint p = on_paper(ring[i]);
            path += fmt::format("{}{} {}", i == 0 ? "M" : "L", trimmed_text(p.x, 3), trimmed_text(p.y, 3));
        }
        path += "Z";
    }
    return path;
}

/// The ring's point that is lowest on the paper: values of nested rings then stand below one another.
PlanPoint label_point(const std::vector<PlanPoint>& ring, const OnPaper& on_paper) {
    PlanPoint lowest = on_paper(ring.front());
    for (const PlanPoint& point : ring) {
        const PlanPoint p = on_paper(point);
        if (p.y > lowest.y) lowest = p;
    }
    return lowest;
}

double paper_width(const std::vector<PlanPoint>& ring, const OnPaper& on_paper) {
    double low = 1e300;
    double high = -1e300;
    for (const PlanPoint& point : ring) {
        low = std::min(low, on_paper(point).x);
        high = std::max(high, on_paper(point).x);
    }
    return high - low;
}

/// Values beside the lines, brightest first; one that would cover another is left out.
std::string labels(const std::vector<Isolux>& lines, const OnPaper& on_paper, double text_size) {
    std::string out;
    std::vector<PlanPoint> taken;
    for (auto line = lines.rbegin(); line != lines.rend(); ++line)
        for (const std::vector<PlanPoint>& ring : line->rings) {
            if (paper_width(ring, on_paper) < 2.5 * text_size) continue;
            const PlanPoint p = label_point(ring, on_paper);
            const bool covers = std::any_of(taken.begin(), taken.end(), [&](PlanPoint other) {
                return std::abs(other.x - p.x) < 2.2 * text_size && std::abs(other.y - p.y) < 1.1 * text_size;
            });
            if (covers) continue;
            taken.push_back(p);
            out += fmt::format("<text x=\"{}\" y=\"{}\">{}</text>\n", trimmed_text(p.x, 3),
                               trimmed_text(p.y + 0.35 * text_size, 3), trimmed_text(line->lux, 1));
        }
    return out;
}

} // namespace

std::string isolux_layer(const LuxMap& map, const OnPaper& on_paper, double text_size) {
    const std::vector<Isolux> lines = isolux_lines(map, isolux_levels(map));
    if (lines.empty()) return "";
    std::string out = "<g class=\"isolux\" role=\"group\" aria-label=\"Light on the ground, lux\">\n";
    for (std::size_t i = 0; i < lines.size(); ++i)
        out += fmt::format(
            "<path d=\"{}\" fill=\"{}\" fill-opacity=\"0.75\" fill-rule=\"evenodd\" stroke=\"{}\" "
            "stroke-width=\"{}\" stroke-linejoin=\"round\"><title>{} lx or more</title></path>\n",
            path_of(lines[i], on_paper), colour_of(i), line_colour, trimmed_text(text_size * 0.06, 4),
            trimmed_text(lines[i].lux, 1));
    out += fmt::format("<g font-size=\"{}\" text-anchor=\"middle\" fill=\"#4a3000\" stroke=\"#fffaf0\" "
                       "stroke-width=\"{}\" paint-order=\"stroke\">\n{}</g>\n",
                       trimmed_text(text_size, 3), trimmed_text(text_size * 0.25, 4),
                       labels(lines, on_paper, text_size));
    return out + "</g>\n";
}

std::string isolux_key(const LuxMap& map, PlanPoint corner, double text_size) {
    const std::vector<double> levels = isolux_levels(map);
    std::string out = fmt::format("<g class=\"isolux-key\" font-size=\"{}\" fill=\"#1b2733\">\n",
                                  trimmed_text(text_size, 3));
    for (std::size_t i = 0; i < levels.size(); ++i) {
        const double x = corner.x + static_cast<double>(i) * 4.2 * text_size;
        out += fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"{}\" stroke=\"{}\" "
                           "stroke-width=\"{}\"/><text x=\"{}\" y=\"{}\">{} lx</text>\n",
                           trimmed_text(x, 3), trimmed_text(corner.y - 0.8 * text_size, 3),
                           trimmed_text(text_size, 3), trimmed_text(text_size, 3), colour_of(i), line_colour,
                           trimmed_text(text_size * 0.06, 4), trimmed_text(x + 1.3 * text_size, 3),
                           trimmed_text(corner.y, 3), trimmed_text(levels[i], 1));
    }
    return out + "</g>\n";
}

} // namespace rillwatt
