#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "plan_drawing.hpp"
#include <cmath>

namespace rillwatt {

std::string fixture_symbol(const FixtureType* type, std::optional<double> pointing_degrees) {
    const FixtureKind kind = type ? type->kind : FixtureKind::other;
    std::string out = "<circle class=\"rw-lamp\" r=\"5\"/>";
    switch (kind) {
    case FixtureKind::path:
        out += "<path class=\"rw-line\" d=\"M0-8V-5M0 8V5M-8 0H-5M8 0H5\"/>";
        break;
    case FixtureKind::submersible:
        out += "<path class=\"rw-thin\" d=\"M-7 8q1.75-2.4 3.5 0t3.5 0t3.5 0t3.5 0\"/>";
        break;
    case FixtureKind::accent:
        out += fmt::format("<path class=\"rw-line\" transform=\"rotate({:.0f})\" d=\"M4-3L10-6M4 3L10 6\"/>",
                           -pointing_degrees.value_or(90));
        break;
    case FixtureKind::downlight:
        out += "<path class=\"rw-line\" d=\"M-3.5-3.5L3.5 3.5M-3.5 3.5L3.5-3.5\"/>";
        break;
    case FixtureKind::step:
        out += "<path class=\"rw-line\" d=\"M-8-5H8\"/>";
        break;
    case FixtureKind::other:
        out += "<circle class=\"rw-solid\" r=\"1.6\"/>";
        break;
    }
    return out;
}

std::string splice_symbol() { return "<path class=\"rw-solid\" d=\"M0-4.6L4.6 0L0 4.6L-4.6 0Z\"/>"; }

std::string transformer_symbol() {
    return "<rect class=\"rw-body\" x=\"-8.5\" y=\"-6.5\" width=\"17\" height=\"13\"/>"
           "<circle class=\"rw-thin\" cx=\"-2.2\" r=\"3.6\"/><circle class=\"rw-thin\" cx=\"2.2\" "
           "r=\"3.6\"/>";
}

std::string pump_symbol() {
    return "<circle class=\"rw-body\" r=\"7\"/><path class=\"rw-solid\" d=\"M-3.4-5L6-0L-3.4 5Z\"/>";
}

std::string outlet_symbol() {
    return "<rect class=\"rw-body\" x=\"-5.5\" y=\"-5.5\" width=\"11\" height=\"11\" rx=\"2.5\"/>"
           "<path class=\"rw-line\" d=\"M-1.8-2.5V2.5M1.8-2.5V2.5\"/>";
}

std::string mark_symbol() {
    return "<circle class=\"rw-thin\" r=\"3.6\"/><path class=\"rw-thin\" d=\"M-7 0H7M0-7V7\"/>";
}

std::string viewpoint_symbol(double looking_degrees) {
    return fmt::format("<g transform=\"rotate({:.0f})\"><path class=\"rw-thin\" d=\"M3 0L12-5M3 0L12 5\"/>"
                       "<path class=\"rw-body\" d=\"M-5 0Q0-5.5 5 0Q0 5.5-5 0Z\"/>"
                       "<circle class=\"rw-solid\" r=\"1.7\"/></g>",
                       -looking_degrees);
}

namespace {

double bearing(PlanPoint from, PlanPoint to) {
    return std::atan2(to.y - from.y, to.x - from.x) * 180 / 3.14159265358979323846;
}

std::string symbol_group(const PlanDrawing& plan, const std::string& id, const char* classes, SheetPoint at,
                         const std::string& drawing, const std::string& title) {
    const std::string ring =
        plan.faulty.count(id) ? "<circle class=\"rw-wrong\" r=\"11.5\"/>" : std::string();
    return fmt::format("<g class=\"rw-part {}\"{} transform=\"translate({} {})\">{}{}{}</g>\n", classes,
                       part_attribute(id), coordinate(at.x), coordinate(at.y), svg_title(title), drawing,
                       ring);
}

const LampResult* lamp_of(const Assessment& assessment, std::size_t fixture) {
    if (assessment.solution.cases.empty()) return nullptr;
    for (const LampResult& lamp : assessment.solution.nominal().lamps)
        if (lamp.fixture == fixture) return &lamp;
    return nullptr;
}

std::optional<double> pointing(const Fixture& fixture) {
    if (fixture.aim.at && fixture.at) return bearing(*fixture.at, on_plan(*fixture.aim.at));
    if (fixture.aim.bearing) return fixture.aim.bearing->value();
    return std::nullopt;
}

std::string fixture_title(const PlanDrawing& plan, const Fixture& fixture, const FixtureType* type,
                          const LampResult* lamp) {
    std::string title = fmt::format("{}: {}", fixture.id, fixture.model);
    if (lamp)
        title += fmt::format(", {} V, {} A", fixed_text(lamp->volts.value(), 2),
                             fixed_text(lamp->amps.value(), 2));
    if (type)
        title += fmt::format(", works from {} to {} V", trimmed_text(type->window_low.value(), 1),
                             trimmed_text(type->window_high.value(), 1));
    for (const DrawnCable& cable : plan.cables)
        if (cable.part == fixture.id && cable.length && cable.length->length)
            title += fmt::format(", {} of {} from {}", plan.length(*cable.length->length),
                                 cable.cable.empty() ? "cable not chosen yet" : cable.cable, cable.from);
    return title;
}

void draw_fixture(PlanDrawing& plan, std::size_t i) {
    const Fixture& fixture = plan.site.fixtures[i];
    if (!fixture.at) return;
    const FixtureType* type =
        plan.assessment.catalog ? find_entry(plan.assessment.catalog->fixtures, fixture.model) : nullptr;
    const LampResult* lamp = lamp_of(plan.assessment, i);
    const SheetPoint at = plan.sheet.at(*fixture.at);
    plan.symbols += symbol_group(plan, fixture.id, "rw-light", at, fixture_symbol(type, pointing(fixture)),
                                 fixture_title(plan, fixture, type, lamp));
    LabelText text{.part = fixture.id,
                   .name = fixture.id,
                   .figure = {},
                   .size = 11,
                   .bold = true,
                   .classes = {},
                   .group = {}};
    if (lamp) text.figure = fixed_text(lamp->volts.value(), 2) + " V";
    if (lamp && type && (lamp->volts < type->window_low || lamp->volts > type->window_high))
        text.classes = "rw-bad-text";
    plan.add_symbol_label(text, at, 9);
}

void draw_viewpoint(PlanDrawing& plan, const Viewpoint& viewpoint) {
    double looking = 90;
    for (const Falls& falls : plan.site.falls)
        if (!viewpoint.looks_at.empty() && falls.id == viewpoint.looks_at.front())
            looking = bearing(viewpoint.at, {(falls.lip_left.x + falls.lip_right.x) / 2,
                                             (falls.lip_left.y + falls.lip_right.y) / 2});
    const SheetPoint at = plan.sheet.at(viewpoint.at);
    plan.symbols +=
        symbol_group(plan, viewpoint.id, "rw-viewpoint", at, viewpoint_symbol(looking),
                     fmt::format("{}: viewpoint, eye at {}", viewpoint.id, plan.length(viewpoint.eye)));
    plan.add_symbol_label({.part = viewpoint.id,
                           .name = viewpoint.id,
                           .figure = {},
                           .size = 10,
                           .classes = "rw-faint",
                           .group = {}},
                          at, 11);
}

/// A part that is a name at a place and no more.
template<class PartList>
void draw_named(PlanDrawing& plan, const PartList& parts, const char* classes, const std::string& drawing,
                double radius, auto&& describe) {
    for (const auto& part : parts) {
        if (!part.at) continue;
        const SheetPoint at = plan.sheet.at(*part.at);
        const std::string figure = describe(part);
        plan.symbols += symbol_group(plan, part.id, classes, at, drawing,
                                     figure.empty() ? part.id : part.id + ": " + figure);
        plan.add_symbol_label({.part = part.id,
                               .name = part.id,
                               .figure = figure,
                               .size = 11,
                               .bold = true,
                               .classes = {},
                               .group = {}},
                              at, radius);
    }
}

} // namespace

void draw_symbols(PlanDrawing& plan) {
    const Site& site = plan.site;
    for (const Mark& mark : site.marks) {
        const SheetPoint at = plan.sheet.at(mark.at);
        plan.symbols +=
            symbol_group(plan, mark.id, "rw-mark", at, mark_symbol(), mark.id + ": mark to tape from");
        plan.add_symbol_label(
            {.part = mark.id, .name = mark.id, .figure = {}, .size = 10, .classes = "rw-faint", .group = {}},
            at, 7);
    }
    for (const Viewpoint& viewpoint : site.viewpoints)
        draw_viewpoint(plan, viewpoint);
    draw_named(plan, site.circuits, "rw-outlet", outlet_symbol(), 7, [](const BranchCircuit& circuit) {
        return circuit.breaker ? fmt::format("{} A{}", trimmed_text(circuit.breaker->value(), 1),
                                             circuit.gfci ? " GFCI" : "")
                               : std::string(circuit.gfci ? "GFCI" : "");
    });
    draw_named(plan, site.pumps, "rw-pump", pump_symbol(), 8, [](const Pump& pump) { return pump.model; });
    draw_named(plan, site.transformers, "rw-transformer", transformer_symbol(), 10,
               [](const Transformer& t) { return t.model.value_or("model open"); });
    draw_named(plan, site.splices, "rw-splice", splice_symbol(), 5,
               [](const Splice&) { return std::string(); });
    for (std::size_t i = 0; i < site.fixtures.size(); ++i)
        draw_fixture(plan, i);
}

} // namespace rillwatt
