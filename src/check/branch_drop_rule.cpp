#include "rillwatt/limits/limits.hpp"
#include "rillwatt/mains/branch_conductor.hpp"
#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include "mains_finding.hpp"

namespace rillwatt {

namespace {

const CodeLimit<double>& limit_for(const RuleContext& context, const MainsCircuit& circuit) {
    return abroad(context) && !circuit.feeds_lights() ? code_limits::branch_drop_other_iec
                                                      : code_limits::branch_drop;
}

Finding unknown_drop(const RuleContext& context, const MainsCircuit& circuit) {
    const auto& branch = written(context, circuit);
    const auto& source = limit_for(context, circuit).source;
    std::vector<std::string> missing;
    std::vector<std::string> write;
    std::vector<std::string_view> open_keys;
    if (!branch.conductor || !branch_impedance(*branch.conductor)) {
        missing.emplace_back(branch.conductor ? "its conductor is in no table of impedances"
                                              : "its conductor is open");
        write.emplace_back(abroad(context) ? "`conductor = \"2.5 mm2\"`" : "`conductor = \"12 AWG\"`");
        open_keys.emplace_back("conductor");
    }
    if (!branch.length) {
        missing.emplace_back("its length is open");
        write.emplace_back("`length`, panel to outlet, one way");
        open_keys.emplace_back("length");
    }
    if (!circuit.amps_known) {
        missing.emplace_back("a load on it has no model");
        write.emplace_back("the `model` of each load on it");
        open_keys.clear(); // its own keys alone do not do
    }
    return cannot_judge(context, branch, joined(missing), joined(write), source, std::move(open_keys));
}

std::vector<Finding> find(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const auto& circuit : context.mains.circuits) {
        if (circuit.parts.empty()) continue;
        if (!circuit.drop_known) {
            findings.push_back(unknown_drop(context, circuit));
            continue;
        }
        const auto& limit = limit_for(context, circuit);
        if (!above(circuit.drop_ratio, limit.value)) continue;
        const auto& branch = written(context, circuit);
        findings.push_back(finding_about(
            context, branch, Severity::warning,
            fmt::format("{} drops {} % ({} V of {} V) over {} of {}, more than {} %", branch.id,
                        fixed_text(circuit.drop_ratio * 100, 2),
                        fixed_text(circuit.drop_ratio * circuit.volts.value(), 2),
                        trimmed_text(circuit.volts.value(), 1), length_in(context, *branch.length),
                        *branch.conductor, trimmed_text(limit.value * 100, 1)),
            "a thicker conductor; `rillwatt circuits` proposes one", limit.source));
    }
    return findings;
}

} // namespace

Rule branch_drop_rule() {
    return {.id = "branch-drop",
            .group = RuleGroup::mains,
            .severity = "warning",
            .summary = "A branch circuit loses more than 3 % of its volts on the way to the outlet",
            .explanation =
                "2 L I (R cos phi + X sin phi) with the AC resistance and reactance of copper in PVC "
                "conduit at 75 C, the loads' currents added by component. The code gives 3 % as an "
                "informational note, not as a rule: pumps start harder and transformers pass every "
                "missing volt on to the lamps. With code = \"iec\": 3 % for lighting, 5 % for other uses.",
            .source = [] { return source_of_all_editions(code_limits::branch_drop.source); },
            .find = find};
}

} // namespace rillwatt
