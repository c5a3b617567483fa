#include "rillwatt/mains/burial.hpp"
#include "rillwatt/mains/code_limits.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include "mains_finding.hpp"

namespace rillwatt {

namespace {

bool too_shallow(Metres cover, Metres needed) { return cover < needed - plan_slack; }

/// Whether a circuit may use the shallower column for GFCI-protected 120 V circuits of homes; empty: its
/// breaker is open, so nobody can say.
std::optional<bool> counts_as_home_gfci(const RuleContext& context, const BranchCircuit& branch) {
    if (!branch.gfci || circuit_volts(context.site, branch) > home_gfci_volts) return false;
    if (!branch.breaker) return std::nullopt;
    return *branch.breaker <= home_gfci_amps;
}

Finding depth_finding(const RuleContext& context, const BranchCircuit& branch, Metres needed) {
    return finding_about(
        context, branch, Severity::error,
        fmt::format("{} lies {} deep under {} ({}), it needs {}", branch.id, depth_in(context, *branch.cover),
                    crossing_name(branch.crosses), wiring_name(*branch.wiring), depth_in(context, needed)),
        "dig deeper, or change the wiring method: rigid metal conduit may lie shallower", burial_source);
}

std::optional<Finding> judge(const RuleContext& context, const BranchCircuit& branch) {
    if (!branch.wiring)
        return branch.outdoors ? std::optional(cannot_judge(
                                     context, branch, "how it is wired is open",
                                     "`wiring`: \"direct-burial\", \"rigid-metal\", \"pvc\" or \"indoor\"",
                                     burial_source, {"wiring"}))
                               : std::nullopt;
    const auto needed = cover_needed(*branch.wiring, branch.crosses, context.site.settings.dwelling);
    if (!needed) return std::nullopt;
    if (!branch.cover)
        return cannot_judge(context, branch, "its burial depth is open",
                            fmt::format("`cover`, {} or more", depth_in(context, needed->by_wiring)),
                            burial_source, {"cover"});
    if (!too_shallow(*branch.cover, needed->by_wiring)) return std::nullopt;
    const auto home = needed->as_home_gfci ? counts_as_home_gfci(context, branch) : std::optional(false);
    const bool home_deep_enough = needed->as_home_gfci && !too_shallow(*branch.cover, *needed->as_home_gfci);
    if (home_deep_enough && !home)
        return cannot_judge(
            context, branch,
            fmt::format("{} of cover is enough with a breaker of 20 A or less, its breaker is open",
                        depth_in(context, *branch.cover)),
            "`breaker`", burial_source, {"breaker"});
    if (home_deep_enough && *home) return std::nullopt;
    return depth_finding(context, branch, home.value_or(true) ? *needed->as_home_gfci : needed->by_wiring);
}

/// The crew's own 12 V cable: column 5.
std::optional<Finding> judge_low_voltage(const RuleContext& context) {
    const Metres needed = minimum_cover(BurialPlace::not_listed_below, BurialMethod::low_voltage_direct);
    const Metres cover = context.site.settings.cable_cover;
    if (context.site.fixtures.empty() || !too_shallow(cover, needed)) return std::nullopt;
    Part site;
    site.location.file = context.site.file;
    return finding_about(
        context, site, Severity::error,
        fmt::format("the low-voltage cable lies {} deep, it needs {}", depth_in(context, cover),
                    depth_in(context, needed)),
        "set `cable_cover` deeper; less is allowed only where the instructions of the listed "
        "lighting system say so",
        burial_source);
}

std::vector<Finding> find(const RuleContext& context) {
    std::vector<Finding> findings;
    if (abroad(context)) return findings; // the rule of breakers says once what is not judged
    if (auto low = judge_low_voltage(context)) findings.push_back(*low);
    for (const auto& branch : context.site.circuits)
        if (auto finding = judge(context, branch)) findings.push_back(*finding);
    return findings;
}

} // namespace

Rule burial_depth_rule() {
    return {.id = "burial-depth",
            .group = RuleGroup::mains,
            .severity = "error",
            .summary = "A buried circuit lies shallower than the code allows for its wiring and crossing",
            .explanation =
                "Direct burial 24 in, rigid metal conduit 6 in, PVC 18 in under lawn; a slab of 4 in "
                "allows 18, 4 and 4; driveways of homes 18, other driveways 24 whatever the method. A "
                "120 V circuit of a home, GFCI protected and at most 20 A, may lie at 12 in. Low-voltage "
                "cable at 6 in unless the system's instructions say less.",
            .source = [] { return source_of_all_editions(burial_source); },
            .find = find};
}

} // namespace rillwatt
