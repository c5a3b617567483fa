#include "rillwatt/sizing/size.hpp"

#include "rillwatt/search/site_search.hpp"

#include "choices.hpp"
#include "infeasible.hpp"
#include "reasons.hpp"
#include "strong_supply.hpp"
#include "tap_choice.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt {

namespace {

/// Costs are sums of prices: two that differ by less are the same.
constexpr double cost_rounding = 1e-7;

void settle_status(const sizing::SiteAnswer& answer, SizeResult& result) {
    if (!std::isfinite(answer.cost)) return;
    result.cost = Money(answer.cost);
    const bool proven = answer.bound >= answer.cost - cost_rounding;
    result.lower_bound = Money(proven ? answer.cost : answer.bound);
    result.status = proven ? SizeStatus::optimal : SizeStatus::feasible;
}

/// Explains the first transformer that has no answer.
void explain(const Site& site, const Catalog& catalog, const SiteLengths& lengths,
             const sizing::SizeProblem& problem, const sizing::SiteAnswer& answer, SizeResult& result) {
    const auto without = std::find_if(answer.proposals.begin(), answer.proposals.end(),
                                      [](const auto& proposal) { return !proposal; });
    if (without == answer.proposals.end()) return;
    const bool proven = !answer.hopeless.empty();
    const auto index =
        proven ? answer.hopeless.front() : static_cast<std::size_t>(without - answer.proposals.begin());
    result.infeasible = sizing::explain_infeasible(site, catalog, lengths, problem, index);
    result.infeasible->proven = proven;
}

/// Searches with the effort asked for, or what is usual.
sizing::SiteAnswer search_once(const sizing::SizeProblem& problem, SizeResult& result) {
    const SizeOptions& options = problem.options;
    sizing::Effort effort(options.effort > 0 ? options.effort : sizing::usual_effort(problem),
                          options.out_of_time);
    sizing::SiteAnswer answer = sizing::search_site(problem, effort);
    result.steps += effort.used();
    return answer;
}

/// Searches with taps that suit a strong supply first, and again without where that leaves no answer.
sizing::SiteAnswer search_for_strong_supply(const Site& site, sizing::SizeProblem& problem,
                                            SizeResult& result) {
    sizing::limit_to_strong_supply(site, problem);
    sizing::SiteAnswer answer = search_once(problem, result);
    result.beyond_strong = sizing::lift_strong_limits(site, answer, problem);
    return result.beyond_strong.empty() ? answer : search_once(problem, result);
}

} // namespace

const char* size_status_name(SizeStatus status) {
    switch (status) {
    case SizeStatus::optimal:
        return "optimal";
    case SizeStatus::feasible:
        return "feasible";
    case SizeStatus::infeasible:
        return "infeasible";
    }
    return "";
}

double SizeResult::gap() const {
    if (!cost || !lower_bound || cost->value() <= 0) return 0;
    return (*cost - *lower_bound) / *cost;
}

LoadResult<SizeResult> size_site(const std::shared_ptr<const Site>& site,
                                 const std::shared_ptr<const Catalog>& catalog, const SizeOptions& options) {
    return size_site(site, *catalog, measure_lengths(*site), options);
}

LoadResult<SizeResult> size_site(const std::shared_ptr<const Site>& site, const Catalog& catalog,
                                 const SiteLengths& lengths, const SizeOptions& options) {
    const Site open = options.all ? sizing::reopened(*site) : *site;
    const auto circuits = build_circuits(open, catalog, lengths);
    if (!circuits) return {std::nullopt, circuits.errors};
    sizing::SizeProblem problem = sizing::gather(open, catalog, *circuits.value, options);
    SizeResult result;
    sizing::SiteAnswer answer = options.strong_supply ? search_for_strong_supply(open, problem, result)
                                                      : search_once(problem, result);
    for (std::size_t t = 0; t < answer.proposals.size(); ++t) {
        if (!answer.proposals[t]) continue;
        sizing::Trial trial(problem, problem.transformers[t]);
        sizing::choose_roomiest_taps(problem, problem.transformers[t], site->settings, trial,
                                     *answer.proposals[t]);
    }
    for (std::size_t t = 0; t < answer.proposals.size(); ++t) {
        if (!answer.proposals[t]) continue;
        const auto reasons =
            sizing::give_reasons(open, problem, problem.transformers[t], *answer.proposals[t]);
        result.reasons.insert(result.reasons.end(), reasons.begin(), reasons.end());
    }
    settle_status(answer, result);
    explain(open, catalog, lengths, problem, answer, result);
    auto sized = std::make_shared<Site>(*site);
    result.choices = sizing::put_in_place(problem, answer.proposals, *sized);
    result.sized = sized;
    result.unpriced = problem.unpriced;
    result.left_out = problem.left_out;
    return {std::move(result), {}};
}

} // namespace rillwatt
