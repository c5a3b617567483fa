#include "rillwatt/limits/limits.hpp"
#include "rillwatt/mains/branch_conductor.hpp"
#include "rillwatt/mains/breaker.hpp"
#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include "mains_finding.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

const BranchConductor* conductor_of(const BranchCircuit& circuit) {
    return circuit.conductor ? find_branch_conductor(*circuit.conductor) : nullptr;
}

std::string sizes_known() {
    std::vector<std::string> sizes;
    for (const auto& conductor : branch_conductors())
        sizes.emplace_back(conductor.size);
    return joined(sizes);
}

/// The note of a rule that needs the conductor: left out, or of a size that the table does not have.
Finding conductor_note(const RuleContext& context, const BranchCircuit& circuit, const LimitSource& source) {
    if (!circuit.conductor)
        return cannot_judge(context, circuit, "its conductor is open",
                            "`conductor = \"12 AWG\"` or what it is", source, {"conductor"});
    return cannot_judge(context, circuit, fmt::format("conductor {} is not in the table", *circuit.conductor),
                        "one of " + sizes_known(), source);
}

Finding overloaded(const RuleContext& context, const MainsCircuit& circuit) {
    const auto& branch = written(context, circuit);
    return finding_about(
        context, branch, Severity::error,
        fmt::format("{} needs {} by design ({} running, {} of it continuous), its breaker is {}", branch.id,
                    amps_text(circuit.design_amps), amps_text(circuit.amps),
                    amps_text(circuit.continuous_amps), nominal_amps_text(*branch.breaker)),
        "move a load to another circuit, or a larger breaker with the conductor for it",
        code_limits::continuous_factor.source);
}

/// The wire itself may be the weaker one: above 10 AWG the breaker may be the next size up.
std::optional<Finding> wire_overloaded(const RuleContext& context, const MainsCircuit& circuit) {
    const auto& branch = written(context, circuit);
    const auto* conductor = conductor_of(branch);
    if (conductor == nullptr || abroad(context)) return std::nullopt;
    const Amperes ampacity = usable_ampacity(*conductor);
    if (!above(circuit.design_amps, ampacity)) return std::nullopt;
    return finding_about(context, branch, Severity::error,
                         fmt::format("{} needs {} by design, its {} carries {}", branch.id,
                                     amps_text(circuit.design_amps), *branch.conductor,
                                     nominal_amps_text(ampacity)),
                         "a thicker conductor, or move a load to another circuit", ampacity_source);
}

/// One plug may not take more than its share of the branch, nor a fastened load where others share it.
std::optional<Finding> one_load_too_large(const RuleContext& context, const MainsCircuit& circuit,
                                          const MainsLoad& load) {
    if (abroad(context) || load.kind != MainsLoadKind::pump || !load.amps) return std::nullopt;
    const auto& branch = written(context, circuit);
    const bool shared = circuit.parts.size() > 1;
    if (load.hardwired && !shared) return std::nullopt;
    const auto& limit = load.hardwired ? code_limits::fixed_load_share : code_limits::cord_load_share;
    const Amperes allowed = limit.value * *branch.breaker;
    if (!above(*load.amps, allowed)) return std::nullopt;
    return finding_about(context, branch, Severity::error,
                         fmt::format("pump {} draws {} on {}, one {} load may take {} of its {} breaker",
                                     load.id, amps_text(*load.amps), branch.id,
                                     load.hardwired ? "hardwired" : "cord-and-plug",
                                     nominal_amps_text(allowed), nominal_amps_text(*branch.breaker)),
                         load.hardwired ? "a circuit of its own for the pump"
                                        : "a larger breaker with the conductor and receptacle for it",
                         limit.source);
}

void judge_load(const RuleContext& context, const MainsCircuit& circuit, std::vector<Finding>& findings) {
    const auto& branch = written(context, circuit);
    const auto wire = wire_overloaded(context, circuit);
    if (wire) findings.push_back(*wire);
    if (!branch.breaker) {
        findings.push_back(cannot_judge(context, branch, "its breaker is open",
                                        "`breaker = 20` or what it is", code_limits::continuous_factor.source,
                                        {"breaker"}));
        return;
    }
    if (above(circuit.design_amps, *branch.breaker)) {
        findings.push_back(overloaded(context, circuit));
        return;
    }
    for (const auto& load : circuit.parts)
        if (auto large = one_load_too_large(context, circuit, load)) findings.push_back(*large);
}

std::vector<Finding> find_circuit_overloaded(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const auto& circuit : context.mains.circuits) {
        if (circuit.parts.empty()) continue;
        if (!circuit.amps_known)
            findings.push_back(cannot_judge(
                context, written(context, circuit), "a load on it has no model, its amperes are unknown",
                "the `model` of each transformer and pump on it", code_limits::continuous_factor.source));
        judge_load(context, circuit, findings);
    }
    return findings;
}

std::vector<Finding> find_breaker_exceeds_conductor(const RuleContext& context) {
    if (context.site.circuits.empty()) return {};
    if (abroad(context)) return {not_judged_abroad(context)};
    std::vector<Finding> findings;
    for (const auto& branch : context.site.circuits) {
        const auto* conductor = conductor_of(branch);
        const auto& source =
            conductor != nullptr && !conductor->breaker_max ? next_breaker_source : small_conductor_source;
        if (conductor == nullptr) {
            findings.push_back(conductor_note(context, branch, source));
            continue;
        }
        if (!branch.breaker) {
            findings.push_back(cannot_judge(context, branch, "its breaker is open",
                                            "`breaker = 20` or what it is", source, {"breaker"}));
            continue;
        }
        const Amperes largest = largest_breaker(*conductor, context.site.settings.code_edition);
        if (!above(*branch.breaker, largest)) continue;
        findings.push_back(finding_about(
            context, branch, Severity::error,
            fmt::format("{} has a {} breaker on {}, which may have {}", branch.id,
                        nominal_amps_text(*branch.breaker), *branch.conductor, nominal_amps_text(largest)),
            branch.outlet == Outlet::hardwired ? "a thicker conductor or a smaller breaker; for a motor "
                                                 "alone the electrician may go by 430.52"
                                               : "a thicker conductor or a smaller breaker",
            source));
    }
    return findings;
}

/// 430.22 and 430.24: 125 % of the largest motor, the other loads beside it.
Amperes motor_conductor_amps(const MainsCircuit& circuit) {
    Amperes largest(0);
    for (const auto& load : circuit.parts)
        if (load.kind == MainsLoadKind::pump && load.amps) largest = std::max(largest, *load.amps);
    return circuit.amps + (code_limits::motor_factor.value - 1) * largest;
}

std::vector<Finding> find_motor_conductor(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const auto& circuit : context.mains.circuits) {
        if (!circuit.feeds_pumps()) continue;
        if (abroad(context)) return {};
        const auto& branch = written(context, circuit);
        const auto* conductor = conductor_of(branch);
        if (conductor == nullptr) {
            findings.push_back(conductor_note(context, branch, code_limits::motor_factor.source));
            continue;
        }
        const Amperes needed = motor_conductor_amps(circuit);
        const Amperes ampacity = usable_ampacity(*conductor);
        if (!above(needed, ampacity)) continue;
        findings.push_back(finding_about(
            context, branch, Severity::error,
            fmt::format("{} must carry {} (125 % of its largest motor and the rest), its {} carries {}",
                        branch.id, amps_text(needed), *branch.conductor, nominal_amps_text(ampacity)),
            "a thicker conductor, or a circuit of its own for the pump", code_limits::motor_factor.source));
    }
    return findings;
}

std::vector<Finding> find_lighting_branch(const RuleContext& context) {
    std::vector<Finding> findings;
    const auto& limit = code_limits::lighting_branch;
    for (const auto& circuit : context.mains.circuits) {
        if (!circuit.feeds_lights()) continue;
        if (abroad(context)) return {};
        const auto& branch = written(context, circuit);
        if (!branch.breaker) {
            findings.push_back(cannot_judge(context, branch, "its breaker is open", "`breaker = 20` or less",
                                            limit.source, {"breaker"}));
            continue;
        }
        if (!above(*branch.breaker, limit.value)) continue;
        findings.push_back(finding_about(
            context, branch, Severity::error,
            fmt::format("{} feeds low-voltage lighting from a {} breaker, at most "
                        "{} is allowed",
                        branch.id, nominal_amps_text(*branch.breaker), nominal_amps_text(limit.value)),
            "a 20 A or 15 A circuit for the transformers", limit.source));
    }
    return findings;
}

} // namespace

Rule circuit_overloaded_rule() {
    return {.id = "circuit-overloaded",
            .group = RuleGroup::mains,
            .severity = "error",
            .summary = "A branch circuit carries more than its breaker or its conductor may",
            .explanation =
                "The design current is 125 % of what runs three hours a day or more and of the largest "
                "motor that is not in it, plus the rest. One cord-and-plug load may take 80 % of the "
                "breaker, a hardwired pump half of it where lights or plugs share the circuit. A "
                "transformer counts with its computed input, or with its rating while its low-voltage "
                "side is open.",
            .source = [] { return source_of_all_editions(code_limits::continuous_factor.source); },
            .find = find_circuit_overloaded};
}

Rule breaker_exceeds_conductor_rule() {
    return {.id = "breaker-exceeds-conductor",
            .group = RuleGroup::mains,
            .severity = "error",
            .summary = "A breaker is larger than its conductor may have",
            .explanation =
                "14 AWG copper takes 15 A, 12 AWG 20 A, 10 AWG 30 A. Thicker wire goes by the 60 C "
                "column of the ampacity table, and the next standard breaker up where that is none.",
            .source = [] { return source_of_all_editions(small_conductor_source); },
            .find = find_breaker_exceeds_conductor};
}

Rule motor_conductor_rule() {
    return {.id = "motor-conductor",
            .group = RuleGroup::mains,
            .severity = "error",
            .summary = "The conductor of a pump circuit is too thin for its motors",
            .explanation =
                "Motor conductors carry 125 % of the largest motor's full-load current and the other "
                "loads. A hardwired motor with horsepower counts with the table current where that is "
                "higher than its nameplate.",
            .source = [] { return source_of_all_editions(code_limits::motor_factor.source); },
            .find = find_motor_conductor};
}

Rule lighting_branch_rule() {
    return {.id = "lighting-branch-over-20a",
            .group = RuleGroup::mains,
            .severity = "error",
            .summary = "Low-voltage lighting hangs on a breaker above 20 A",
            .explanation = "A branch circuit that supplies a low-voltage lighting system is limited to 20 A.",
            .source = [] { return source_of_all_editions(code_limits::lighting_branch.source); },
            .find = find_lighting_branch};
}

} // namespace rillwatt
