#include "rillwatt/layout/places.hpp"
#include "rillwatt/limits/limits.hpp"
#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include "mains_finding.hpp"

namespace rillwatt {

namespace {

const char* protection_name(const RuleContext& context) {
    return abroad(context) ? "a residual-current device of 30 mA" : "GFCI protection";
}

/// The article that asks for GFCI on a pump.
const LimitSource& pump_gfci_source(const MainsLoad& load) {
    if (load.pump != nullptr && load.pump->submersible) return code_limits::fountain_gfci;
    return load.hardwired ? code_limits::dry_pump_gfci : code_limits::cord_gfci;
}

Finding pump_finding(const RuleContext& context, const BranchCircuit& branch, const MainsLoad& load) {
    const Pump& pump = context.site.pumps[load.part];
    const auto& source = pump_gfci_source(load);
    const bool asked_for = abroad(context) || !article(source, context.site.settings.code_edition).empty();
    if (!asked_for)
        return finding_about(
            context, pump, Severity::note,
            fmt::format("pump {} is hardwired and not submersible: GFCI protection is not asked for "
                        "in the 2017 edition, it is since 2020 (680.59)",
                        pump.id),
            fmt::format("give {} GFCI protection all the same", branch.id), source);
    return finding_about(
        context, pump, Severity::error,
        fmt::format("pump {} hangs on {}, which has no {}", pump.id, branch.id,
                    abroad(context) ? "30 mA residual-current protection" : "GFCI protection"),
        fmt::format("give {} {}, at the breaker or at the outlet", branch.id, protection_name(context)),
        source);
}

std::vector<Finding> find_pump(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const auto& circuit : context.mains.circuits)
        for (const auto& load : circuit.parts)
            if (load.kind == MainsLoadKind::pump && !written(context, circuit).gfci)
                findings.push_back(pump_finding(context, written(context, circuit), load));
    for (const auto& load : context.mains.unassigned)
        if (load.kind == MainsLoadKind::pump)
            findings.push_back(cannot_judge(context, context.site.pumps[load.part], "it names no circuit",
                                            "`circuit = \"...\"` and that circuit's `gfci`",
                                            code_limits::fountain_gfci));
    return findings;
}

/// Whether the plan puts a receptacle within the distance that needs GFCI wherever it is; empty: no `at`.
std::optional<bool> near_fountain(const RuleContext& context, const BranchCircuit& branch) {
    if (!branch.at) return std::nullopt;
    const auto away = context.areas.distance_to_water(*branch.at);
    return away && *away <= code_limits::fountain_receptacle_gfci.value + plan_slack;
}

bool has_water(const RuleContext& context) { return context.areas.has_water(); }

/// The article that asks for GFCI on an outdoor receptacle; null where the 2017 edition leaves 250 V out.
const LimitSource* outdoor_source(const RuleContext& context, const BranchCircuit& branch) {
    if (!context.site.settings.dwelling) return &code_limits::other_receptacle_gfci;
    const bool only_125 = !abroad(context) && context.site.settings.code_edition < 2020;
    if (only_125 && circuit_volts(context.site, branch) > Volts(125)) return nullptr;
    return &code_limits::outdoor_receptacle_gfci;
}

Finding receptacle_finding(const RuleContext& context, const BranchCircuit& branch, const char* where,
                           const LimitSource& source) {
    return finding_about(
        context, branch, Severity::error,
        fmt::format("the receptacle of {} {} has no {}", branch.id, where,
                    abroad(context) ? "30 mA residual-current protection" : "GFCI protection"),
        fmt::format("give it {}", protection_name(context)), source);
}

std::optional<Finding> judge_receptacle(const RuleContext& context, const BranchCircuit& branch) {
    const auto near = near_fountain(context, branch);
    if (near && *near) {
        const std::string where = fmt::format(
            "within {} of water", length_in(context, code_limits::fountain_receptacle_gfci.value));
        return receptacle_finding(context, branch, where.c_str(),
                                  code_limits::fountain_receptacle_gfci.source);
    }
    if (branch.outdoors) {
        if (const auto* source = outdoor_source(context, branch))
            return receptacle_finding(context, branch, "outdoors", *source);
        return finding_about(
            context, branch, Severity::note,
            fmt::format("the {} V receptacle of {} needs GFCI protection since the 2020 edition "
                        "(210.8(A)), not in 2017",
                        trimmed_text(circuit_volts(context.site, branch).value(), 1), branch.id),
            "give it GFCI protection all the same", code_limits::outdoor_receptacle_gfci);
    }
    if (!near && has_water(context))
        return cannot_judge(context, branch,
                            "its outlet is not on the plan, so its distance to water is unknown",
                            "`at = [x, y]`", code_limits::fountain_receptacle_gfci.source);
    return std::nullopt;
}

std::vector<Finding> find_receptacle(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const auto& branch : context.site.circuits) {
        if (branch.gfci || branch.outlet != Outlet::receptacle) continue;
        if (auto finding = judge_receptacle(context, branch)) findings.push_back(*finding);
    }
    return findings;
}

std::vector<Finding> find_shared(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const auto& circuit : context.mains.circuits) {
        const auto& branch = written(context, circuit);
        if (!branch.gfci || circuit.parts.size() < 2 || !circuit.feeds_pumps()) continue;
        findings.push_back(
            finding_about(context, branch, Severity::note,
                          fmt::format("{} share one GFCI on {}: when one leaks, all of them go out",
                                      joined(circuit.loads), branch.id),
                          circuit.feeds_lights()
                              ? "a circuit of its own for each pump keeps the lights on when a pump fails"
                              : "a GFCI for each pump",
                          common_practice));
    }
    return findings;
}

std::vector<Finding> find_leakage(const RuleContext& context) {
    std::vector<Finding> findings;
    const auto& limit = abroad(context) ? code_limits::rcd_leakage_ma : code_limits::gfci_leakage_ma;
    for (const auto& circuit : context.mains.circuits) {
        const auto& branch = written(context, circuit);
        if (!branch.gfci) continue;
        if (above(circuit.leakage_ma, limit.value))
            findings.push_back(finding_about(
                context, branch, Severity::warning,
                fmt::format("{} leak {} mA together on {}, a {} should not see more than {} mA",
                            joined(circuit.loads), trimmed_text(circuit.leakage_ma, 2), branch.id,
                            abroad(context) ? "30 mA device" : "GFCI", trimmed_text(limit.value, 1)),
                "spread the pumps over several GFCIs", limit.source));
        if (!circuit.no_leakage.empty())
            findings.push_back(cannot_judge(
                context, branch, fmt::format("the leakage of {} is not known", joined(circuit.no_leakage)),
                "`leakage_ma` in the catalog entry of that pump", limit.source));
    }
    return findings;
}

} // namespace

Rule pump_without_gfci_rule() {
    return {
        .id = "pump-without-gfci",
        .group = RuleGroup::mains,
        .severity = "error",
        .summary = "A pump has no ground-fault protection",
        .explanation =
            "Submersible pumps of a fountain and everything there with cord and plug need GFCI protection, "
            "since "
            "2020 also pumps that are hardwired and stand dry. Set `gfci = true` where the breaker or the "
            "receptacle has it. With code = \"iec\" it means a residual-current device of 30 mA.",
        .source =
            [] {
                return source_of_all_editions(code_limits::fountain_gfci) + "; " +
                       source_of_all_editions(code_limits::cord_gfci) + "; " +
                       source_of_all_editions(code_limits::dry_pump_gfci);
            },
        .find = find_pump};
}

Rule receptacle_without_gfci_rule() {
    return {.id = "receptacle-without-gfci",
            .group = RuleGroup::mains,
            .severity = "error",
            .summary = "A receptacle outdoors or near water has no ground-fault protection",
            .explanation =
                "Receptacles outdoors need GFCI protection; for homes the 2017 edition asks it of 125 V "
                "receptacles, later editions up to 250 V. Within 20 ft of a fountain every 15 or 20 A "
                "receptacle needs it.",
            .source =
                [] {
                    return source_of_all_editions(code_limits::outdoor_receptacle_gfci) + "; " +
                           source_of_all_editions(code_limits::fountain_receptacle_gfci.source);
                },
            .find = find_receptacle};
}

Rule shared_gfci_rule() {
    return {.id = "shared-gfci",
            .group = RuleGroup::mains,
            .severity = "note",
            .summary = "A pump shares its GFCI with other loads",
            .explanation =
                "Pumps age in water and one day leak enough to trip. Whatever hangs on the same GFCI goes "
                "out with them; lights then fail when people need them to see what is wrong.",
            .source = common_practice.practice,
            .find = find_shared};
}

Rule leakage_sum_rule() {
    return {.id = "leakage-sum",
            .group = RuleGroup::mains,
            .severity = "warning",
            .summary = "The expected leakage on one GFCI is close to where it trips",
            .explanation =
                "A class A GFCI trips from 6 mA and may from 4 mA; leakages of all loads on it add up. "
                "3 mA leaves room for age and weather. With code = \"iec\": 9 mA on a device of 30 mA.",
            .source = common_practice.practice,
            .find = find_leakage};
}

} // namespace rillwatt
