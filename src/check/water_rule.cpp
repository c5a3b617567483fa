#include "rillwatt/layout/places.hpp"
#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include "mains_finding.hpp"
#include <algorithm>
#include <map>

namespace rillwatt {

namespace {

std::vector<Finding> find_not_submersible(const RuleContext& context) {
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < context.site.fixtures.size(); ++i) {
        const FixtureType* type = context.circuits.fixture_types[i];
        if (type->rating == WaterRating::submersible) continue;
        const Fixture& fixture = context.site.fixtures[i];
        if (!context.areas.in_water(fixture)) continue;
        findings.push_back(
            finding_about(context, fixture, Severity::error,
                          fmt::format("{} stands in water, {} is rated {} only", fixture.id, type->id,
                                      water_rating_name(type->rating)),
                          "a submersible light, or move it out of the water; over the water, as on "
                          "a bridge, write `in_water = false`",
                          code_limits::submersible_light));
    }
    return findings;
}

/// The lights in water of each run of a transformer, by run.
std::map<int, std::vector<const Fixture*>> wet_lights(const Site& site, const TransformerCircuit& circuit) {
    std::map<int, std::vector<const Fixture*>> lights;
    for (const auto& node : circuit.nodes) {
        if (node.kind != NodeKind::fixture || !node.in_water) continue;
        lights[node.run].push_back(&site.fixtures[node.part]);
    }
    return lights;
}

const LimitSource& wet_source(const RuleContext& context) {
    return code_limits::wet_contact_limit(context.site.settings).source;
}

/// What a tap shows where its transformer hangs on other volts than its primary is made for.
std::string shown_words(const TransformerCircuit& circuit, Volts tap, Volts shown) {
    if (shown == tap) return "";
    return fmt::format(", which shows {} on a supply of {}", volts_text(shown),
                       nominal_volts_text(circuit.supply));
}

Finding tap_too_high(const RuleContext& context, const Breach& breach) {
    const TransformerCircuit& circuit = context.circuits.transformers[breach.transformer];
    const CircuitRun& run = circuit.runs[static_cast<std::size_t>(breach.run)];
    const Part& light = part_of(context.site, circuit, breach);
    return finding_about(context, light, severity_of(breach),
                         fmt::format("{} stands in water on the {} tap of run {}{}, {} is the contact limit",
                                     light.id, nominal_volts_text(*run.tap), context.site.runs[run.run].id,
                                     shown_words(circuit, *run.tap, Volts(breach.value)),
                                     nominal_volts_text(Volts(breach.limit))),
                         "a lower tap with thicker cable, or move the light out of the water",
                         wet_source(context));
}

Finding strong_note(const RuleContext& context, const Breach& breach) {
    const Part& run = part_of(context.site, context.circuits.transformers[breach.transformer], breach);
    return finding_about(
        context, run, severity_of(breach),
        fmt::format("run {} feeds lights in water and can show {} when the supply is {} % high; the "
                    "contact limit is {}",
                    run.id, volts_text(Volts(breach.value)),
                    trimmed_text(context.site.settings.supply_band * 100, 1),
                    nominal_volts_text(Volts(breach.limit))),
        "measure the tap without load on the day; a lower tap keeps clear of the limit", wet_source(context));
}

std::vector<Finding> find_wet_contact(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const Breach& breach : context.breaches) {
        if (breach.kind != BreachKind::contact_volts) continue;
        findings.push_back(breach.node >= 0 ? tap_too_high(context, breach) : strong_note(context, breach));
    }
    return findings;
}

std::vector<std::string> ids_of(const std::map<int, std::vector<const Fixture*>>& by_run) {
    std::vector<std::string> ids;
    for (const auto& [run, lights] : by_run)
        for (const Fixture* fixture : lights)
            ids.push_back(fixture->id);
    return ids;
}

std::vector<Finding> find_supply(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const auto& circuit : context.circuits.transformers) {
        const auto lights = ids_of(wet_lights(context.site, circuit));
        if (lights.empty() || (circuit.type != nullptr && circuit.type->water_listed)) continue;
        const Transformer& transformer = context.site.transformers[circuit.transformer];
        if (circuit.type == nullptr) {
            findings.push_back(
                cannot_judge(context, transformer,
                             fmt::format("its model is open and {} in water {} on it", some_of(lights),
                                         lights.size() == 1 ? "hangs" : "hang"),
                             "a `model` listed for pools and fountains", code_limits::water_supply));
            continue;
        }
        findings.push_back(finding_about(
            context, transformer, Severity::error,
            fmt::format("{} ({}) is not listed for supplying lights in water, and {} in water {} on it",
                        transformer.id, circuit.type->id, some_of(lights),
                        lights.size() == 1 ? "hangs" : "hang"),
            "a transformer listed for pools and fountains; sizing chooses one when `model` is left out",
            code_limits::water_supply));
    }
    return findings;
}

} // namespace

Rule fixture_not_submersible_rule() {
    return {.id = "fixture-not-submersible",
            .group = RuleGroup::low_voltage,
            .severity = "error",
            .summary = "A light in water is not made for it",
            .explanation =
                "A light that lies in an area of kind water, or says `in_water = true`, must be rated "
                "submersible. With code = \"iec\": IPX8.",
            .source = [] { return source_of_all_editions(code_limits::submersible_light); },
            .find = find_not_submersible};
}

Rule wet_contact_voltage_rule() {
    return {.id = "wet-contact-voltage",
            .group = RuleGroup::low_voltage,
            .severity = "error at nominal supply, note where only a strong supply exceeds it",
            .summary = "A light in water hangs on more than 15 V",
            .explanation =
                "15 V AC is the limit where people may touch with wet skin. It is judged on what the tap "
                "shows without load: its volts times the supply over the transformer's primary volts. Above "
                "it only on a strong supply is a note. With code = \"iec\": SELV of at most 12 V in the "
                "zones of a basin.",
            .source =
                [] {
                    return source_of_all_editions(code_limits::wet_contact.source) +
                           "; code = \"iec\": " + source_of_all_editions(code_limits::wet_contact_iec.source);
                },
            .find = find_wet_contact};
}

Rule supply_not_listed_rule() {
    return {.id = "supply-not-listed-for-water",
            .group = RuleGroup::low_voltage,
            .severity = "error",
            .summary = "Lights in water hang on a transformer that is not listed for it",
            .explanation =
                "The supply needs an isolated winding with a grounded shield or double insulation, and a "
                "listing for pools and fountains. A landscape transformer without it must not feed lights "
                "in water, whatever its volts.",
            .source = [] { return source_of_all_editions(code_limits::water_supply); },
            .find = find_supply};
}

} // namespace rillwatt
