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
             const sizing::SizeProblem& problem, const sizing::SiteAnswer& answer, sizing::Effort& effort,
             SizeResult& result) {
    const auto without = std::find_if(answer.proposals.begin(), answer.proposals.end(),
                                      [](const auto& proposal) { return !proposal; });
    if (without == answer.proposals.end()) return;
    const bool proven = !answer.hopeless.empty();
    const auto index =
        proven ? answer.hopeless.front() : static_cast<std::size_t>(without - answer.proposals.begin());
    result.infeasible = sizing::explain_infeasible(site, catalog, lengths, problem, index, effort);
    result.infeasible->proven = proven;
}

/// What all stages together may take: what is asked for, or what is usual for the search and a third of that
/// for what is said about its answer; twice as much where a strong supply may ask for a second search.
sizing::Effort whole_effort(const sizing::SizeProblem& problem) {
    const SizeOptions& options = problem.options;
    const std::size_t usual = sizing::usual_effort(problem) / 3 * 4 * (options.strong_supply ? 2 : 1);
    return {options.effort > 0 ? options.effort : usual, options.out_of_time};
}

/// Searches with a share of the whole effort.
sizing::SiteAnswer search_with(const sizing::SizeProblem& problem, std::size_t most, sizing::Effort& effort) {
    sizing::Effort part = effort.part(most);
    sizing::SiteAnswer answer = sizing::search_site(problem, part);
    effort.spend(part.used());
    return answer;
}

/// Searches with taps that suit a strong supply first, and again without where that leaves no answer.
sizing::SiteAnswer search_for_strong_supply(const Site& site, sizing::SizeProblem& problem, std::size_t most,
                                            sizing::Effort& effort, SizeResult& result) {
    sizing::limit_to_strong_supply(site, problem);
    sizing::SiteAnswer answer = search_with(problem, most / 2, effort);
    sizing::Effort lifting = effort.part(most / 4);
    result.beyond_strong = sizing::lift_strong_limits(site, answer, problem, lifting);
    effort.spend(lifting.used());
    return result.beyond_strong.empty() ? answer : search_with(problem, most / 2, effort);
}

sizing::SiteAnswer search_as_asked(const Site& site, sizing::SizeProblem& problem, sizing::Effort& effort,
                                   SizeResult& result) {
    const std::size_t most = effort.limit() / 4 * 3; // the rest is for what is said about the answer
    return problem.options.strong_supply ? search_for_strong_supply(site, problem, most, effort, result)
                                         : search_with(problem, most, effort);
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
    sizing::Effort effort = whole_effort(problem);
    sizing::SiteAnswer answer = search_as_asked(open, problem, effort, result);
    for (std::size_t t = 0; t < answer.proposals.size(); ++t) {
        if (!answer.proposals[t]) continue;
        sizing::Trial trial(problem, problem.transformers[t]);
        sizing::choose_roomiest_taps(problem, problem.transformers[t], site->settings, trial,
                                     *answer.proposals[t], effort);
    }
    for (std::size_t t = 0; t < answer.proposals.size(); ++t) {
        if (!answer.proposals[t]) continue;
        const auto reasons =
            sizing::give_reasons(open, problem, problem.transformers[t], *answer.proposals[t], effort);
        result.reasons.insert(result.reasons.end(), reasons.begin(), reasons.end());
    }
    settle_status(answer, result);
    explain(open, catalog, lengths, problem, answer, effort, result);
    result.steps = effort.used();
    auto sized = std::make_shared<Site>(*site);
    result.choices = sizing::put_in_place(problem, answer.proposals, *sized);
    result.sized = sized;
    result.unpriced = problem.unpriced;
    result.left_out = problem.left_out;
    return {std::move(result), {}};
}

} // namespace rillwatt
