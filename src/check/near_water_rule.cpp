#include "rillwatt/layout/places.hpp"
#include "rillwatt/limits/supply_limits.hpp"
#include "rillwatt/mains/code_limits.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include "mains_finding.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

const auto& limit = code_limits::low_voltage_to_water;

/// Listed for water, and every tap that is chosen within the contact limit. (The US one: where code = "iec"
/// this rule is silent.)
bool good_for_water(const Site& site, const TransformerCircuit& circuit, const CircuitNode& node) {
    if (circuit.type == nullptr || !circuit.type->water_listed) return false;
    const auto& tap = circuit.runs[static_cast<std::size_t>(node.run)].tap;
    return !tap || !against_contact_limit(site.settings, contact_volts(circuit, *tap)).broken();
}

/// Which lights hang on a supply that lets them stand near water; a light without feed does not.
std::vector<char> on_good_supply(const RuleContext& context) {
    std::vector<char> good(context.site.fixtures.size(), 0);
    for (const auto& circuit : context.circuits.transformers)
        for (const auto& node : circuit.nodes)
            if (node.kind == NodeKind::fixture)
                good[node.part] = good_for_water(context.site, circuit, node) ? 1 : 0;
    return good;
}

Finding near_finding(const RuleContext& context, const Part& part, const std::string& what, Metres away,
                     const char* hint) {
    return finding_about(context, part, Severity::warning,
                         fmt::format("{} is {} from the water, nearer than {}", what,
                                     length_in(context, away), length_in(context, limit.value)),
                         hint, limit.source);
}

void judge_lights(const RuleContext& context, std::vector<Finding>& findings) {
    const std::vector<char> on_good = on_good_supply(context);
    for (std::size_t i = 0; i < context.site.fixtures.size(); ++i) {
        const Fixture& fixture = context.site.fixtures[i];
        if (context.areas.in_water(fixture)) continue; // other rules speak of lights in water
        const auto away = too_near_water(context.areas, context.site.settings, fixture.at);
        if (!away || on_good[i] != 0) continue;
        findings.push_back(
            near_finding(context, fixture, fixture.id, *away,
                         "hang it on a transformer listed for water with a tap of at most 15 V, or "
                         "move it away"));
    }
}

void judge_transformers(const RuleContext& context, std::vector<Finding>& findings) {
    for (const auto& circuit : context.circuits.transformers) {
        const Transformer& transformer = context.site.transformers[circuit.transformer];
        const auto away = too_near_water(context.areas, context.site.settings, transformer.at);
        if (!away || (circuit.type != nullptr && circuit.type->water_listed)) continue;
        if (circuit.type == nullptr)
            findings.push_back(cannot_judge(
                context, transformer,
                fmt::format("it is {} from the water and its model is open", length_in(context, *away)),
                "a `model` listed for water, or move it away", limit.source));
        else
            findings.push_back(near_finding(context, transformer, "transformer " + transformer.id, *away,
                                            context.areas.water_at(*transformer.at) != nullptr
                                                ? "move it out of the water, listed or not"
                                                : "move it away, or a transformer listed for water"));
    }
}

/// One note for all that is not on the plan.
void note_unplaced(const RuleContext& context, std::vector<Finding>& findings) {
    std::vector<std::string> ids;
    for (const auto& fixture : context.site.fixtures)
        if (!fixture.at && !context.areas.in_water(fixture)) ids.push_back(fixture.id);
    for (const auto& transformer : context.site.transformers)
        if (!transformer.at) ids.push_back(transformer.id);
    if (ids.empty()) return;
    Part site;
    site.location.file = context.site.file;
    findings.push_back(
        finding_about(context, site, Severity::note,
                      fmt::format("distance to water not judged for {}: not on the plan", some_of(ids)),
                      "write `at = [x, y]` for each", limit.source));
}

bool has_part_in_water(const RuleContext& context) {
    return !context.site.pumps.empty() ||
           std::any_of(context.site.fixtures.begin(), context.site.fixtures.end(),
                       [&](const Fixture& fixture) { return context.areas.in_water(fixture); });
}

std::vector<Finding> find(const RuleContext& context) {
    const bool water_on_plan = context.areas.has_water();
    if (!water_on_plan && !has_part_in_water(context)) return {};
    if (abroad(context)) return {};
    std::vector<Finding> findings;
    if (!water_on_plan) {
        Part site;
        site.location.file = context.site.file;
        findings.push_back(finding_about(
            context, site, Severity::note, "distances to water not judged: the plan shows no water",
            "write an `[[area]]` with kind = \"water\" and its outline", limit.source));
        return findings;
    }
    judge_lights(context, findings);
    judge_transformers(context, findings);
    note_unplaced(context, findings);
    return findings;
}

} // namespace

Rule near_water_rule() {
    return {.id = "near-water",
            .group = RuleGroup::low_voltage,
            .severity = "warning",
            .summary =
                "A light or a transformer is nearer than 10 ft to water without a supply listed for it",
            .explanation =
                "Low-voltage lighting stays 10 ft from the water's edge unless the rules for pools and "
                "fountains let it nearer: on a supply listed for water and within the contact limit. "
                "Measured on the plan to the nearest outline of an area of kind water.",
            .source = [] { return source_of_all_editions(code_limits::low_voltage_to_water.source); },
            .find = find};
}

} // namespace rillwatt
