#include "rillwatt/search/site_search.hpp"

#include "rillwatt/search/spooled_site.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt::search {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr std::size_t least_effort = 4'000'000;
constexpr std::size_t full_effort_lengths = 1000; ///< so many are searched thoroughly
constexpr std::size_t full_effort = 10'500;       ///< for each of them
constexpr std::size_t further_effort = 3'400;     ///< for each length beyond

} // namespace

std::size_t usual_effort(const SizeProblem& problem) {
    std::size_t lengths = 0;
    for (const TransformerProblem& transformer : problem.transformers)
        for (const RunProblem& run : transformer.runs)
            lengths += run.nodes.size();
    const std::size_t full = std::min(lengths, full_effort_lengths);
    return std::max(least_effort, full_effort * full + further_effort * (lengths - full));
}

SiteAnswer search_site(const SizeProblem& problem, Effort& effort) {
    SpoolPrices prices;
    for (const SpoolCable& spool : problem.spools)
        prices.push_back(spool.price);
    PricedSite linear(problem, prices);
    const bool spooled =
        std::any_of(problem.candidates.begin(), problem.candidates.end(), [&](int candidate) {
            return problem.cables[static_cast<std::size_t>(candidate)].spool >= 0;
        });
    linear.search(spooled ? effort.limit() / 2 : effort.limit(), effort);
    SiteAnswer answer;
    const CostRange typed = SpoolCost(problem).of({});
    answer.bound = typed.cost + linear.bound();
    answer.proposals = linear.proposals();
    for (std::size_t t = 0; t < problem.transformers.size(); ++t)
        if (linear.sizings()[t].bound() == infinity) answer.hopeless.push_back(t);
    answer.cost = site_cost(problem, answer.proposals);
    if (!spooled) {
        // typed spools are the same whatever is chosen: their packing is what the bill buys
        answer.bound = std::min(answer.bound - (typed.cost - typed.bound), answer.cost);
        return answer;
    }
    if (answer.cost < infinity) {
        answer.bound = problem.typed_cost + linear.bound();
        SpooledSite(problem, linear, effort).improve(answer);
    }
    return answer;
}

} // namespace rillwatt::search
