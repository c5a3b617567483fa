#include "rillwatt/plan/size_report.hpp"

#include "rillwatt/sizing/weak_supply.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

/// What the choices are not made from.
constexpr std::string_view no_bearing[] = {"pump", "walk", "falls", "viewpoint"};

/// Where in a site file a part stands: the name of its table.
std::string table_of(const Site& site, const std::string& part) {
    const auto holds = [&](const auto& parts) {
        return std::any_of(parts.begin(), parts.end(), [&](const auto& each) { return each.id == part; });
    };
    if (holds(site.transformers)) return "transformer";
    if (holds(site.runs)) return "run";
    if (holds(site.splices)) return "splice";
    return holds(site.links) ? "link" : "fixture";
}

LoadResult<SizeResult> choose(const LoadedSite& loaded, const SizeOptions& options) {
    return options.weak_supply ? size_for_weak_supply(loaded.site, loaded.catalog, options)
                               : size_site(loaded.site, loaded.catalog, options);
}

} // namespace

LoadResult<SizeReport> report_sizing(const LoadedSite& loaded, SizeOptions options, bool weak_supply) {
    options.weak_supply = weak_supply;
    LoadResult<SizeResult> sized = choose(loaded, options);
    if (!sized) return {std::nullopt, located(std::move(sized.errors), loaded)};
    LoadResult<Assessment> before = assess(loaded.site, loaded.catalog);
    if (!before) return {std::nullopt, located(std::move(before.errors), loaded)};
    LoadResult<Assessment> after = assess(sized.value->sized, loaded.catalog);
    if (!after) return {std::nullopt, located(std::move(after.errors), loaded)};
    Bill bill = make_bill(*sized.value->sized, *loaded.catalog, after.value->lengths, after.value->circuits);
    return {SizeReport{std::move(*sized.value), std::move(options), std::move(*before.value),
                       std::move(*after.value), std::move(bill)},
            {}};
}

bool found_before(const SizeReport& report, const Finding& finding) {
    const std::vector<Finding>& before = report.before.findings;
    return std::any_of(before.begin(), before.end(), [&](const Finding& old) {
        return old.severity != Severity::note && old.rule == finding.rule && old.part == finding.part;
    });
}

std::vector<Finding> warned_of(const SizeReport& report) {
    if (report.result.infeasible) return {};
    std::vector<Finding> warned;
    for (const Finding& finding : report.after.findings)
        if (finding.severity != Severity::note) warned.push_back(finding);
    std::stable_partition(warned.begin(), warned.end(),
                          [&](const Finding& finding) { return !found_before(report, finding); });
    return warned;
}

SiteUpdate update_with_choices(const LoadedSite& loaded, const std::vector<SizeChoice>& choices) {
    SiteUpdate update{{}, {}, no_bearing};
    for (const SizeChoice& choice : choices)
        update.values.push_back(
            {table_of(*loaded.site, choice.part), choice.part, choice.what,
             choice.volts ? toml_number(choice.volts->value()) : toml_string(choice.value)});
    return update;
}

} // namespace rillwatt
