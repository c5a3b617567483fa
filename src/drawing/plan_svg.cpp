#include "rillwatt/drawing/plan_svg.hpp"

#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include "ground_shapes.hpp"
#include "isolux_values.hpp"
#include "plan_drawing.hpp"
#include "shape_markup.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

/// Grid lines at round numbers of site units, with their numbers along the left and lower edge.
void draw_grid(const PlanSheet& sheet, LengthUnit unit, std::string& lines, std::string& numbers) {
    const double step = round_step(sheet.pixels_per_metre, unit, 52);
    const auto number = [&](double metres) { return trimmed_text(metres / unit_metres(unit), 2); };
    std::string d;
    for (double k = std::ceil(sheet.low.x / step); k * step <= sheet.high.x; ++k) {
        const double x = sheet.at({k * step, 0}).x;
        d += fmt::format("M{} {}V{}", coordinate(x), coordinate(sheet.frame.y),
                         coordinate(sheet.frame.bottom()));
        numbers +=
            svg_text({x, sheet.frame.bottom() + 13}, number(k * step), 9.5, "rw-faint", Anchor::middle);
    }
    for (double k = std::ceil(sheet.low.y / step); k * step <= sheet.high.y; ++k) {
        const double y = sheet.at({0, k * step}).y;
        d += fmt::format("M{} {}H{}", coordinate(sheet.frame.x), coordinate(y),
                         coordinate(sheet.frame.right()));
        numbers += svg_text({sheet.frame.x - 5, y + 3.3}, number(k * step), 9.5, "rw-faint", Anchor::end);
    }
    numbers += svg_text({sheet.frame.x - 5, sheet.frame.bottom() + 13}, unit == LengthUnit::feet ? "ft" : "m",
                        9.5, "rw-faint", Anchor::end);
    lines = "<path class=\"rw-grid\" d=\"" + d + "\"/>\n";
}

constexpr std::string_view drawing_name = "plan";

/// Light on the ground is filled, which hides what is below: outlines come above it, and the lines of equal
/// light above these.
std::string lit_ground(const PlanDrawing& plan, const std::vector<DrawnIsolux>& lines) {
    return isolux_bands(lines) + ground_outlines(plan.sheet, plan.site, drawing_name) +
           isolux_contours(lines);
}

/// Values of the lines of equal light where the names leave room: light moves no name.
std::vector<PlacedLabel> placed_values(PlanDrawing& plan, const std::vector<DrawnIsolux>& lines) {
    constexpr double text_size = 9.5;
    for (IsoluxValue& value : isolux_values(lines, text_size))
        plan.add_label({.part = {},
                        .name = value.words,
                        .figure = {},
                        .size = text_size,
                        .classes = "rw-lux",
                        .group = {}},
                       {.places = std::move(value.places), .optional = true});
    std::size_t left_out = 0;
    return placed_labels(plan, left_out);
}

std::string description(const PlanDrawing& plan) {
    const Site& site = plan.site;
    return fmt::format(
        "Plan to scale of {}: {} areas, {} transformers, {} lights, {} pumps, with cables along "
        "their routes. The same figures stand in the tables.",
        site.settings.name, site.areas.size(), site.transformers.size(), site.fixtures.size(),
        site.pumps.size());
}

PlanDrawing empty_drawing(const Assessment& assessment) {
    const Site& site = *assessment.site;
    PlanDrawing plan{.assessment = assessment,
                     .site = site,
                     .sheet = plan_sheet(site, assessment.lengths),
                     .cables = drawn_cables(assessment),
                     .faulty = {},
                     .areas = {},
                     .walks = {},
                     .ground = {},
                     .wires = {},
                     .symbols = {},
                     .label_ground = {},
                     .requests = {},
                     .texts = {}};
    for (const Finding& finding : assessment.findings)
        if (finding.severity == Severity::error && !finding.part.empty()) plan.faulty.insert(finding.part);
    const SheetBox& frame = plan.sheet.frame;
    plan.label_ground.frame = {frame.x + 3, frame.y + 3, frame.width - 6, frame.height - 6};
    return plan;
}

std::string opening(const PlanDrawing& plan, double height) {
    return fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"rw-drawing rw-plan\" role=\"img\" "
                       "aria-labelledby=\"rw-plan-title rw-plan-desc\" viewBox=\"0 0 {0} {1}\" width=\"{0}\" "
                       "height=\"{1}\" data-drawing=\"plan\" {4}>\n"
                       "<title id=\"rw-plan-title\">{2}</title>\n<desc id=\"rw-plan-desc\">{3}</desc>\n",
                       coordinate(plan.sheet.width), coordinate(height),
                       html_text("Plan of " + plan.site.settings.name), html_text(description(plan)),
                       scale_attributes(plan.sheet));
}

std::string box_attributes(const SheetBox& box) {
    return fmt::format("x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"", coordinate(box.x), coordinate(box.y),
                       coordinate(box.width), coordinate(box.height));
}

std::string definitions(const PlanDrawing& plan) {
    return drawing_style() + "\n<defs>" + area_patterns(drawing_name) +
           fmt::format("<clipPath id=\"rw-plan-frame\"><rect {}/></clipPath></defs>\n",
                       box_attributes(plan.sheet.frame));
}

/// All that lies within the frame, from the ground up.
std::string layers(const PlanDrawing& plan, const std::string& grid, const std::string& light,
                   const std::vector<PlacedLabel>& labels) {
    const auto markup = [](const std::vector<Shape>& shapes) { return shapes_markup(shapes, drawing_name); };
    return fmt::format("<g{} clip-path=\"url(#rw-plan-frame)\">\n",
                       light.empty() ? "" : " class=\"rw-lit\"") +
           markup(plan.areas) + grid + markup(plan.walks) + light + markup(plan.ground) + markup(plan.wires) +
           markup(plan.symbols) + labels_markup(labels) + "</g>\n";
}

} // namespace

std::string plan_svg(const Assessment& assessment, const PlanOptions& options) {
    PlanDrawing plan = empty_drawing(assessment);
    draw_symbols(plan);
    draw_ground(plan);
    draw_cables(plan);
    draw_areas(plan);
    std::size_t left_out = 0;
    std::vector<PlacedLabel> labels = placed_labels(plan, left_out);
    std::string light;
    if (options.lux) {
        const std::vector<DrawnIsolux> lines = drawn_isolux(*options.lux, plan.sheet);
        light = lit_ground(plan, lines);
        for (PlacedLabel& value : placed_values(plan, lines))
            labels.push_back(std::move(value));
    }
    std::string grid;
    std::string numbers;
    draw_grid(plan.sheet, plan.site.settings.units, grid, numbers);
    double column_end = 0;
    const std::string column = drawn_column(plan, options.lux, left_out, column_end);
    const double height = std::max(plan.sheet.height, column_end + 22);
    return opening(plan, height) + definitions(plan) +
           fmt::format("<rect class=\"rw-paper\" width=\"{}\" height=\"{}\"/>\n",
                       coordinate(plan.sheet.width), coordinate(height)) +
           layers(plan, grid, light, labels) +
           fmt::format("<rect class=\"rw-frame\" {}/>\n", box_attributes(plan.sheet.frame)) + numbers + "\n" +
           column + "</svg>\n";
}

} // namespace rillwatt
