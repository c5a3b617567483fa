#include "rillwatt/layout/places.hpp"
#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/mains/motor_current.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include "mains_finding.hpp"
#include "shore.hpp"

namespace rillwatt {

namespace {

/// A pump's cord in the water it stands in: no way out is short enough, or only the straight one is not.
std::optional<Finding> judge_cord_in_water(const RuleContext& context, const Pump& pump, const Area& water) {
    const auto& limit = code_limits::cord_in_water;
    const Metres nearest = distance_to_edge(water, *pump.at);
    if (nearest > limit.value + plan_slack)
        return finding_about(
            context, pump, Severity::error,
            fmt::format("the cord of pump {} lies in {} for at least {}, {} is allowed", pump.id, water.id,
                        length_in(context, nearest), length_in(context, limit.value)),
            "move the pump nearer to the edge, or bring its supply to it in an approved enclosure",
            limit.source);
    const auto* branch = circuit_named(context.site, pump.circuit);
    if (branch == nullptr || !branch->at) return std::nullopt;
    const Metres straight = length_inside(water, *pump.at, *branch->at);
    if (straight <= limit.value + plan_slack) return std::nullopt;
    return finding_about(
        context, pump, Severity::warning,
        fmt::format("the cord of pump {} straight to {} lies in {} for {}, {} is allowed", pump.id,
                    branch->id, water.id, length_in(context, straight), length_in(context, limit.value)),
        fmt::format("lead it out by the nearest edge, {} away", length_in(context, nearest)), limit.source);
}

/// Lights follow the same article; their low-voltage cable is the crew's own work, so it is a warning.
std::optional<Finding> judge_light_cord(const RuleContext& context, const Fixture& fixture) {
    const auto& limit = code_limits::cord_in_water;
    const Area* water = fixture.at ? context.areas.water_at(*fixture.at) : nullptr;
    if (water == nullptr || !context.areas.in_water(fixture)) return std::nullopt;
    const Metres nearest = distance_to_edge(*water, *fixture.at);
    if (nearest <= limit.value + plan_slack) return std::nullopt;
    return finding_about(
        context, fixture, Severity::warning,
        fmt::format("the cord of light {} lies in {} for at least {}, {} of exposed cord is allowed",
                    fixture.id, water->id, length_in(context, nearest), length_in(context, limit.value)),
        "move it nearer to the edge, or lead its cable in conduit", limit.source);
}

std::vector<Finding> find_cord_in_water(const RuleContext& context) {
    if (abroad(context)) return {};
    std::vector<Finding> findings;
    for (const auto& pump : context.site.pumps) {
        if (!pump.at) {
            findings.push_back(cannot_judge(context, pump, "it is not on the plan", "`at = [x, y]`",
                                            code_limits::cord_in_water.source));
            continue;
        }
        const Area* water = context.areas.water_at(*pump.at);
        if (water == nullptr) continue;
        if (auto finding = judge_cord_in_water(context, pump, *water)) findings.push_back(*finding);
    }
    for (const auto& fixture : context.site.fixtures)
        if (auto finding = judge_light_cord(context, fixture)) findings.push_back(*finding);
    return findings;
}

std::optional<Finding> judge_cord_length(const RuleContext& context, const MainsLoad& load,
                                         const BranchCircuit& branch) {
    const Pump& pump = context.site.pumps[load.part];
    const auto& source = code_limits::nameplate;
    if (load.pump == nullptr || load.hardwired) return std::nullopt;
    if (!pump.at || !branch.at)
        return cannot_judge(context, pump,
                            fmt::format("{} is not on the plan, so the cord cannot be measured",
                                        pump.at ? "the outlet of " + branch.id : "it"),
                            "`at = [x, y]`", source);
    if (load.pump->cord <= Metres(0))
        return cannot_judge(context, pump, "its catalog entry gives no cord", "`cord = \"20 ft\"` there",
                            source);
    const Metres away = distance(*pump.at, *branch.at);
    if (away <= load.pump->cord + plan_slack) return std::nullopt;
    return finding_about(context, pump, Severity::warning,
                         fmt::format("the {} cord of pump {} does not reach {}, {} away in a straight line",
                                     length_in(context, load.pump->cord), pump.id, branch.id,
                                     length_in(context, away)),
                         "move the outlet or the pump; an extension cord is no fixed wiring", source);
}

std::vector<Finding> find_cord_too_short(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const auto& circuit : context.mains.circuits)
        for (const auto& load : circuit.parts) {
            if (load.kind != MainsLoadKind::pump) continue;
            if (auto finding = judge_cord_length(context, load, written(context, circuit)))
                findings.push_back(*finding);
        }
    return findings;
}

std::vector<Finding> find_voltage(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const auto& circuit : context.mains.circuits)
        for (const auto& load : circuit.parts) {
            if (load.pump == nullptr || nameplate_fits(load.pump->volts, circuit.volts)) continue;
            const Pump& pump = context.site.pumps[load.part];
            findings.push_back(finding_about(
                context, pump, Severity::error,
                fmt::format("pump {} is made for {} V, {} has {} V", pump.id,
                            trimmed_text(load.pump->volts.value(), 1), written(context, circuit).id,
                            trimmed_text(circuit.volts.value(), 1)),
                "a circuit of its voltage, or the pump's other model", code_limits::nameplate));
        }
    return findings;
}

} // namespace

Rule cord_in_water_rule() {
    return {.id = "cord-in-water",
            .group = RuleGroup::mains,
            .severity = "error, warning where another way out is short enough and for lights",
            .summary = "More than 10 ft of exposed cord lies in the water",
            .explanation =
                "Measured from the pump to the nearest edge of the water it stands in, which is the least "
                "any cord can have; then along the straight line to its outlet.",
            .source = [] { return source_of_all_editions(code_limits::cord_in_water.source); },
            .find = find_cord_in_water};
}

Rule cord_too_short_rule() {
    return {.id = "cord-too-short",
            .group = RuleGroup::mains,
            .severity = "warning",
            .summary = "A pump's cord does not reach its outlet",
            .explanation =
                "The straight line on the plan is longer than the cord of the catalog; the real way, down "
                "into the water and round the rocks, is longer still.",
            .source = "cord length, from catalog",
            .find = find_cord_too_short};
}

Rule pump_voltage_rule() {
    return {.id = "pump-voltage-mismatch",
            .group = RuleGroup::mains,
            .severity = "error",
            .summary = "A pump's nameplate voltage is not that of its circuit",
            .explanation = "A nameplate of 115 V belongs on 110 to 120 V, one of 230 V on 220 to 240 V.",
            .source = [] { return source_of_all_editions(code_limits::nameplate); },
            .find = find_voltage};
}

} // namespace rillwatt
