#include "rillwatt/layout/trench.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/cautions.hpp"

#include <fmt/format.h>

#include "isolux_layer.hpp"
#include "plan_drawing.hpp"
#include "shape_markup.hpp"
#include <algorithm>
#include <cmath>
#include <map>

namespace rillwatt {
namespace {

/// Writes the column from the top down.
class Column {
  public:
    explicit Column(const SheetBox& box) : box_(box), y_(box.y) {}

    std::string text;

    double left() const { return box_.x; }
    double width() const { return box_.width; }
    double y() const { return y_; }
    void skip(double by) { y_ += by; }

    void line(std::string_view words, double size, std::string_view classes = "", bool bold = false) {
        for (const std::string& part : broken_lines(words, box_.width / (bold ? 1.07 : 1), size)) {
            y_ += size * 1.3;
            text += svg_text({box_.x, y_ - size * 0.3}, part, size, classes, Anchor::start, bold) + "\n";
        }
    }

    void heading(std::string_view words) {
        y_ += 8;
        text += fmt::format("<path class=\"rw-rule\" d=\"M{} {}h{}\"/>\n", coordinate(box_.x), coordinate(y_),
                            coordinate(box_.width));
        y_ += 3;
        line(words, 11, "rw-faint", true);
        y_ += 3;
    }

    /// One row of the legend: a sample 40 wide, then words.
    void row(const std::string& sample, std::string_view words, std::string_view classes = "") {
        constexpr double indent = 50;
        constexpr double size = 11;
        const std::vector<std::string> lines = broken_lines(words, box_.width - indent, size);
        text += fmt::format("<g class=\"{}\" transform=\"translate({} {})\">{}</g>\n", classes,
                            coordinate(box_.x + 20), coordinate(y_ + 9), sample);
        for (const std::string& part : lines) {
            y_ += 15;
            text += svg_text({box_.x + indent, y_ - 2.5}, part, size, "") + "\n";
        }
        y_ += 4;
    }

  private:
    SheetBox box_;
    double y_;
};

std::string swatch(AreaKind kind) {
    const std::string name = area_class(kind);
    return fmt::format(
        "<rect class=\"rw-{0}\" x=\"-18\" y=\"-7\" width=\"36\" height=\"14\"/>"
        "<rect class=\"rw-hatch\" fill=\"url(#rw-plan-hatch-{0})\" x=\"-18\" y=\"-7\" width=\"36\" "
        "height=\"14\"/>",
        name);
}

std::string stroke_sample(const CableStroke& stroke) {
    return fmt::format("<path class=\"rw-cable\" d=\"M-20 0H20\" style=\"stroke-width:{}px{}\"/>",
                       coordinate(stroke.width),
                       stroke.dashes.empty() ? "" : ";stroke-dasharray:" + stroke.dashes);
}

std::string tag_sample(const std::string& run) {
    const std::string name = shortened(run, 8);
    const double width = text_width(name, 9, true) + 8;
    return fmt::format("<path class=\"rw-cable\" d=\"M-20 0H20\" style=\"stroke-width:2.2px\"/>"
                       "<rect class=\"rw-tag\" x=\"{}\" y=\"-5.5\" width=\"{}\" height=\"11\" rx=\"2.5\"/>{}",
                       coordinate(-width / 2), coordinate(width),
                       svg_text({0, 2.7}, name, 9, "rw-tag-text", Anchor::middle, true));
}

constexpr double room_of_north = 60; ///< at the right of the scale bar, its last number included

void draw_scale_bar(Column& column, const PlanDrawing& plan) {
    const LengthUnit unit = plan.site.settings.units;
    const double pixels = plan.sheet.pixels_per_metre;
    const double step = round_step(pixels, unit, 42);
    const double room = column.width() - 24 - (plan.site.settings.north ? room_of_north : 0);
    const int fields = std::max(1, static_cast<int>(room / (step * pixels)));
    const double y = column.y() + 16;
    for (int i = 0; i < fields; ++i)
        column.text += fmt::format("<rect class=\"{}\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"6\"/>",
                                   i % 2 == 0 ? "rw-solid" : "rw-frame",
                                   coordinate(column.left() + 2 + i * step * pixels), coordinate(y),
                                   coordinate(step * pixels));
    for (int i = 0; i <= fields; ++i)
        column.text += svg_text({column.left() + 2 + i * step * pixels, y + 18},
                                trimmed_text(i * step / unit_metres(unit), 2) +
                                    (i == fields ? unit == LengthUnit::feet ? " ft" : " m" : ""),
                                10.5, "", i == 0 ? Anchor::start : Anchor::middle);
    column.text += "\n";
    column.skip(40);
}

void draw_north(Column& column, const PlanDrawing& plan) {
    if (!plan.site.settings.north) return;
    column.text += fmt::format("<g class=\"rw-north\" transform=\"translate({} "
                               "{})\"><title>North</title><circle class=\"rw-thin\" r=\"15\"/>"
                               "<g transform=\"rotate({})\"><path class=\"rw-solid\" d=\"M0-19L6 9L0 4Z\"/>"
                               "<path class=\"rw-body\" d=\"M0-19L-6 9L0 4Z\"/></g>{}</g>\n",
                               coordinate(column.left() + column.width() - 22), coordinate(column.y() - 16),
                               coordinate(90 - plan.site.settings.north->value()),
                               svg_text({-24, 4}, "N", 12, "", Anchor::middle, true));
    column.skip(4); // a tip that points down keeps clear of what follows
}

void legend_of_runs(Column& column, const PlanDrawing& plan) {
    std::map<std::size_t, bool> used;
    for (const DrawnCable& cable : plan.cables)
        if (cable.run) used[*cable.run] = true;
    for (const auto& [run, unused] : used) {
        const Run& r = plan.site.runs[run];
        column.row(tag_sample(r.id),
                   fmt::format("run {} from {}{}", shortened(r.id, 20), shortened(r.from, 20),
                               r.tap ? ", tap " + trimmed_text(r.tap->value(), 1) + " V" : ""),
                   run_class(run));
    }
}

void legend_of_cables(Column& column, const PlanDrawing& plan) {
    std::map<std::string, const DrawnCable*> used;
    bool typed = false;
    for (const DrawnCable& cable : plan.cables) {
        used[cable.type ? cable.type->size : ""] = &cable;
        typed = typed || (cable.length && cable.length->origin == LengthOrigin::typed);
    }
    std::vector<const DrawnCable*> order;
    for (const auto& [size, cable] : used)
        order.push_back(cable);
    const auto section = [](const DrawnCable* c) { return c->type ? c->type->section_mm2 : 0; };
    std::stable_sort(order.begin(), order.end(),
                     [&](const DrawnCable* a, const DrawnCable* b) { return section(a) > section(b); });
    for (const DrawnCable* cable : order)
        column.row(stroke_sample(cable_stroke(cable->type)),
                   cable->type ? "cable " + shortened(cable->type->size, 24) : "cable not chosen yet",
                   "rw-run6");
    if (typed) column.line("A cable whose length was typed is drawn straight and paler.", 9.5, "rw-faint");
}

void legend_of_symbols(Column& column, const PlanDrawing& plan) {
    const Site& site = plan.site;
    const auto row = [&](SymbolKind kind) {
        column.row(symbol_markup({.kind = kind, .pointing = kind == SymbolKind::viewpoint ? 0.0 : 90.0}),
                   symbol_words(kind));
    };
    std::set<SymbolKind> used;
    for (const Shape& shape : plan.symbols)
        used.insert(shape.symbol->kind);
    for (const SymbolKind kind : light_symbols)
        if (used.count(kind) > 0) row(kind);
    for (const SymbolKind kind : {SymbolKind::splice, SymbolKind::transformer, SymbolKind::outlet,
                                  SymbolKind::pump, SymbolKind::viewpoint, SymbolKind::mark})
        if (used.count(kind) > 0) row(kind);
    if (!site.sleeves.empty())
        column.row("<path class=\"rw-sleeve\" d=\"M-18-4H18M-18 4H18\"/><path class=\"rw-line\" "
                   "d=\"M-18-4V4M18-4V4\"/>",
                   "sleeve");
    if (!site.falls.empty())
        column.row("<path class=\"rw-falls-comb\" d=\"M-16-2v8M-10-2v5M-4-2v8M2-2v5M8-2v8M14-2v5\"/><path "
                   "class=\"rw-falls\" d=\"M-17-3H17\"/>",
                   "falls, seen from the toothed side");
    if (!plan.faulty.empty())
        column.row("<circle class=\"rw-wrong\" r=\"8\"/>", "has an error: see the findings");
}

/// Light hides the bed of a walk and leaves its edges.
const char* walk_sample(bool lit) {
    return lit ? "<path class=\"rw-walk-lit\" stroke-width=\"1.2\" d=\"M-18-6H18M-18 6H18\"/>"
               : "<path class=\"rw-walk-edge\" d=\"M-18 0H18\" style=\"stroke-width:14px\"/><path "
                 "class=\"rw-walk-bed\" d=\"M-18 0H18\" style=\"stroke-width:12px\"/><path "
                 "class=\"rw-walk-middle\" d=\"M-18 0H18\"/>";
}

void legend_of_areas(Column& column, const PlanDrawing& plan, bool lit) {
    for (const AreaKind kind :
         {AreaKind::water, AreaKind::building, AreaKind::paving, AreaKind::bed, AreaKind::lawn})
        if (std::any_of(plan.site.areas.begin(), plan.site.areas.end(),
                        [&](const Area& a) { return a.kind == kind; }))
            column.row(swatch(kind), area_class(kind));
    if (!plan.site.walks.empty()) column.row(walk_sample(lit), "walk");
}

void legend_of_light(Column& column, const LuxMap& lux) {
    column.heading("Light on the ground, from");
    LegendFlow legend(column.left(), column.y(), column.width(), 10.5);
    add_isolux_legend(legend, lux);
    column.text += legend.text();
    column.skip(legend.bottom() - column.y());
}

void draw_amounts(Column& column, const PlanDrawing& plan) {
    Metres cable;
    for (const DrawnCable& drawn : plan.cables)
        if (drawn.length && drawn.length->length) cable += *drawn.length->length;
    if (cable <= Metres(0)) return;
    const std::vector<TrenchStretch> trench = trench_stretches(plan.site, plan.assessment.lengths);
    const LengthUnit unit = plan.site.settings.units;
    std::string words = "Cable " + decimal_length_text(cable, unit, 0);
    struct Row {
        TrenchGround ground;
        const char* words;
    };
    for (const Row& row : {Row{TrenchGround::soil, "trench to dig"},
                           {TrenchGround::sleeve, "in sleeves"},
                           {TrenchGround::water, "on the bottom of water"},
                           {TrenchGround::paving, "under paving or walls"}})
        if (const Metres length = trench_length(trench, row.ground); length > Metres(0))
            words += fmt::format(", {} {}", row.words, decimal_length_text(length, unit, 0));
    column.line(words + ".", 10.5);
}

} // namespace

std::string drawn_column(const PlanDrawing& plan, const LuxMap* lux, std::size_t left_out, double& bottom) {
    Column column(plan.sheet.column);
    column.line(shortened(plan.site.settings.name, 60), 17, "", true);
    column.line("Plan of the lighting and the water features", 11.5, "rw-faint");
    draw_scale_bar(column, plan);
    draw_north(column, plan);
    draw_amounts(column, plan);
    if (!plan.cables.empty()) {
        column.heading("Cables");
        legend_of_runs(column, plan);
        legend_of_cables(column, plan);
    }
    column.heading("Parts");
    legend_of_symbols(column, plan);
    if (!plan.site.areas.empty() || !plan.site.walks.empty()) {
        column.heading("Ground");
        legend_of_areas(column, plan, lux != nullptr);
    }
    if (lux) legend_of_light(column, *lux);
    column.heading("Before you dig or connect");
    for (const std::string_view caution : cautions())
        column.line(caution, 9.5);
    if (left_out > 0)
        column.line(fmt::format("{} left out for want of room; the tip of its symbol names it.",
                                left_out == 1 ? "1 label was" : fmt::format("{} labels were", left_out)),
                    9.5, "rw-bad-text");
    bottom = column.y();
    return column.text;
}

} // namespace rillwatt
