#include "rillwatt/limits/standing.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "plan_drawing.hpp"
#include "pointing.hpp"
#include <map>

namespace rillwatt {

namespace {

void add_symbol(PlanDrawing& plan, const std::string& id, const char* kind, SheetPoint at, Symbol symbol,
                std::string title) {
    symbol.wrong = plan.faulty.count(id) > 0;
    plan.symbols.push_back({.part = id,
                            .look = std::string("rw-part ") + kind,
                            .title = std::move(title),
                            .lines = {},
                            .symbol = symbol,
                            .at = at});
}

std::string fixture_title(const PlanDrawing& plan, const Fixture& fixture, const FixtureType* type,
                          const LampResult* lamp, const DrawnCable* cable) {
    std::string title = fmt::format("{}: {}", fixture.id, fixture.model);
    if (lamp)
        title += fmt::format(", {} V, {} A", fixed_text(lamp->volts.value(), 2),
                             fixed_text(lamp->amps.value(), 2));
    if (type)
        title += fmt::format(", works from {} to {} V", trimmed_text(type->window_low.value(), 1),
                             trimmed_text(type->window_high.value(), 1));
    if (cable && cable->length && cable->length->length)
        title += fmt::format(", {} of {} from {}", plan.length(*cable->length->length),
                             cable->cable.empty() ? "cable not chosen yet" : cable->cable, cable->from);
    return title;
}

/// What is known of each fixture, in file order.
struct FixtureFacts {
    const LampResult* lamp = nullptr;
    const DrawnCable* cable = nullptr;
};

std::vector<FixtureFacts> facts_of_fixtures(const PlanDrawing& plan) {
    std::vector<FixtureFacts> facts(plan.site.fixtures.size());
    if (!plan.assessment.solution.cases.empty())
        for (const LampResult& lamp : plan.assessment.solution.nominal().lamps)
            facts[lamp.fixture].lamp = &lamp;
    std::map<std::string_view, const DrawnCable*> cables;
    for (const DrawnCable& cable : plan.cables)
        cables[cable.part] = &cable;
    for (std::size_t i = 0; i < facts.size(); ++i)
        if (const auto it = cables.find(plan.site.fixtures[i].id); it != cables.end())
            facts[i].cable = it->second;
    return facts;
}

void draw_fixture(PlanDrawing& plan, const Fixture& fixture, const FixtureFacts& facts) {
    if (!fixture.at) return;
    const FixtureType* type =
        plan.assessment.catalog ? find_entry(plan.assessment.catalog->fixtures, fixture.model) : nullptr;
    const LampResult* lamp = facts.lamp;
    const SheetPoint at = plan.sheet.at(*fixture.at);
    add_symbol(plan, fixture.id, "rw-light", at, {symbol_of(type), pointing_degrees(fixture)},
               fixture_title(plan, fixture, type, lamp, facts.cable));
    LabelText text{.part = fixture.id,
                   .name = fixture.id,
                   .figure = {},
                   .size = 11,
                   .bold = true,
                   .classes = {},
                   .group = {}};
    if (lamp) text.figure = fixed_text(lamp->volts.value(), 2) + " V";
    if (lamp && type && place_in_window(*type, lamp->volts) != WindowPlace::inside)
        text.classes = "rw-bad-text";
    plan.add_symbol_label(text, at, 9);
}

void draw_viewpoint(PlanDrawing& plan, const Viewpoint& viewpoint) {
    const double looking = looking_degrees(plan.site, viewpoint);
    const SheetPoint at = plan.sheet.at(viewpoint.at);
    add_symbol(plan, viewpoint.id, "rw-viewpoint", at, {SymbolKind::viewpoint, looking},
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
void draw_named(PlanDrawing& plan, const PartList& parts, const char* look, SymbolKind kind, double radius,
                auto&& describe) {
    for (const auto& part : parts) {
        if (!part.at) continue;
        const SheetPoint at = plan.sheet.at(*part.at);
        const std::string figure = describe(part);
        add_symbol(plan, part.id, look, at, {kind}, figure.empty() ? part.id : part.id + ": " + figure);
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
        add_symbol(plan, mark.id, "rw-mark", at, {SymbolKind::mark}, mark.id + ": mark to tape from");
        plan.add_symbol_label(
            {.part = mark.id, .name = mark.id, .figure = {}, .size = 10, .classes = "rw-faint", .group = {}},
            at, 7);
    }
    for (const Viewpoint& viewpoint : site.viewpoints)
        draw_viewpoint(plan, viewpoint);
    draw_named(plan, site.circuits, "rw-outlet", SymbolKind::outlet, 7, [](const BranchCircuit& circuit) {
        return circuit.breaker ? fmt::format("{} A{}", trimmed_text(circuit.breaker->value(), 1),
                                             circuit.gfci ? " GFCI" : "")
                               : std::string(circuit.gfci ? "GFCI" : "");
    });
    draw_named(plan, site.pumps, "rw-pump", SymbolKind::pump, 8, [](const Pump& pump) { return pump.model; });
    draw_named(plan, site.transformers, "rw-transformer", SymbolKind::transformer, 10,
               [](const Transformer& t) { return t.model.value_or("model open"); });
    draw_named(plan, site.splices, "rw-splice", SymbolKind::splice, 5,
               [](const Splice&) { return std::string(); });
    const std::vector<FixtureFacts> facts = facts_of_fixtures(plan);
    for (std::size_t i = 0; i < site.fixtures.size(); ++i)
        draw_fixture(plan, site.fixtures[i], facts[i]);
}

} // namespace rillwatt
