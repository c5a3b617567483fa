#include "rillwatt/search/priced_site.hpp"

#include "rillwatt/search/parallel_for.hpp"

#include <algorithm>

namespace rillwatt::search {

namespace {

constexpr std::size_t unlimited = std::numeric_limits<std::size_t>::max();

/// One pass over the transformers that are not settled, with an even part of the effort left for each. The
/// first pass is made whatever it takes, unless the effort is firm.
bool make_pass(std::vector<TransformerSizing>& sizings, std::size_t limit, const SizeOptions& options,
               Effort& effort) {
    std::vector<TransformerSizing*> waiting;
    for (TransformerSizing& sizing : sizings)
        if (!sizing.settled() && ((!effort.firm() && !sizing.started()) || !effort.spent()))
            waiting.push_back(&sizing);
    if (waiting.empty()) return false;
    const std::size_t left = (limit - std::min(limit, effort.used())) / waiting.size();
    std::vector<Effort> shares;
    for (const TransformerSizing* sizing : waiting)
        shares.emplace_back(sizing->started() || effort.firm() ? left : unlimited, options.out_of_time);
    std::vector<char> moved(waiting.size(), 0);
    parallel_for(waiting.size(), [&](std::size_t i) { moved[i] = waiting[i]->improve(shares[i]) ? 1 : 0; });
    for (const Effort& share : shares)
        effort.spend(share.used());
    return std::find(moved.begin(), moved.end(), 1) != moved.end();
}

SizeProblem with_prices(const SizeProblem& problem, const SpoolPrices& prices) {
    SizeProblem priced = problem;
    for (Cable& cable : priced.cables)
        if (cable.spool >= 0) cable.price = prices[static_cast<std::size_t>(cable.spool)];
    return priced;
}

} // namespace

PricedSite::PricedSite(const SizeProblem& problem, SpoolPrices prices)
    : prices_(std::move(prices)), problem_(with_prices(problem, prices_)) {
    sizings_.reserve(problem_.transformers.size());
    for (const TransformerProblem& transformer : problem_.transformers)
        sizings_.emplace_back(problem_, transformer);
}

void PricedSite::search(std::size_t limit, Effort& effort) {
    size_each(sizings_, limit, problem_.options, effort);
}

double PricedSite::bound() const {
    double bound = 0;
    for (const TransformerSizing& sizing : sizings_)
        bound += sizing.bound();
    return bound;
}

std::vector<std::optional<Proposal>> PricedSite::proposals() const {
    std::vector<std::optional<Proposal>> proposals;
    for (const TransformerSizing& sizing : sizings_)
        proposals.push_back(sizing.best());
    return proposals;
}

void size_each(std::vector<TransformerSizing>& sizings, std::size_t limit, const SizeOptions& options,
               Effort& effort) {
    while (make_pass(sizings, limit, options, effort)) {
    }
}

} // namespace rillwatt::search
