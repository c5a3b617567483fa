#include "rillwatt/search/spool_listing.hpp"

#include <algorithm>
#include <numeric>

namespace rillwatt::search {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double cost_rounding = 1e-9;
constexpr std::size_t most_ways = 20'000;     ///< of one transformer
constexpr std::size_t most_partials = 50'000; ///< combinations of the first transformers

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Whether one buys no more than another: cheaper by length, and of each spooled cable the same pieces or
/// none. Pieces ascend.
bool buys_no_more(const Purchase& a, const Purchase& b) {
    if (a.plain > b.plain + cost_rounding) return false;
    for (std::size_t k = 0; k < a.pieces.size(); ++k)
        if (!a.pieces[k].empty() && a.pieces[k] != b.pieces[k]) return false;
    return true;
}

void sort_pieces(Purchase& bought) {
    for (auto& pieces : bought.pieces)
        std::sort(pieces.begin(), pieces.end());
}

bool many_slots(const SizeProblem& problem) {
    return std::any_of(problem.candidates.begin(), problem.candidates.end(), [&](int candidate) {
        return problem.cables[at(candidate)].spool >= static_cast<int>(spool_slots);
    });
}

} // namespace

SpoolListing::SpoolListing(const SizeProblem& problem, PricedSite& priced, SpoolCost& cost, double limit,
                           Effort& effort)
    : problem_(problem), priced_(priced), cost_(cost), limit_(limit), effort_(effort),
      lists_(problem.transformers.size()), value_seen_(limit), unsettled_(infinity) {
    for (const SpoolCable& cable : problem.spools)
        totals_.emplace_back(cable.sold, whole_length(1e4));
}

bool SpoolListing::known_already(const std::vector<Way>& ways, const Purchase& bought) const {
    return std::any_of(ways.begin(), ways.end(),
                       [&](const Way& way) { return buys_no_more(way.bought, bought); });
}

/// Ways by ascending value. Those beyond what was listed have at least the value that is noted.
void SpoolListing::list(std::size_t t, double limit, Effort& effort) {
    TransformerSizing& sizing = priced_.sizings()[t];
    const TransformerProblem& transformer = problem_.transformers[t];
    const double others = priced_.bound() - sizing.bound();
    const auto give_up_at = [&](double value) { value_seen_ = std::min(value_seen_, value + others); };
    if (many_slots(problem_)) return give_up_at(sizing.bound());
    const Listing how{problem_.options.per_length, 0, problem_.options.any_order};
    const auto source = sizing.source(limit, how, true, effort);
    if (!source) return give_up_at(sizing.bound());
    while (true) {
        const auto candidate = source->next();
        if (!candidate) {
            if (effort.spent()) give_up_at(std::max(sizing.bound(), source->bound()));
            return;
        }
        if (candidate->cost > limit + cost_rounding) return;
        if (lists_[t].size() >= most_ways || effort.spent()) return give_up_at(candidate->cost);
        effort.spend(20);
        Purchase bought = purchase_of(problem_, transformer, candidate->proposal);
        sort_pieces(bought);
        if (known_already(lists_[t], bought) && candidate->exact) continue;
        const bool holds = keeps_order(problem_, transformer, candidate->proposal) &&
                           sizing.trial().judge(candidate->proposal).feasible;
        if (!candidate->exact && !holds) give_up_at(candidate->cost);
        if (holds) lists_[t].push_back({candidate->proposal, std::move(bought), candidate->cost});
    }
}

double SpoolListing::covering_cost(const Purchase& bought) const {
    double cost = problem_.typed_cost + bought.plain;
    for (std::size_t k = 0; k < totals_.size(); ++k) {
        const auto& typed = problem_.spools[k].typed;
        Length total = std::accumulate(typed.begin(), typed.end(), Length{0});
        total = std::accumulate(bought.pieces[k].begin(), bought.pieces[k].end(), total);
        cost += problem_.spools[k].price * metres_of(totals_[k].covering(total));
    }
    return cost;
}

std::vector<SpoolListing::Partial> SpoolListing::extended(const std::vector<Partial>& partials, std::size_t t,
                                                          double cost) {
    double rest = 0;        // value of the transformers that follow
    double rest_prices = 0; // and the price of their models
    for (std::size_t u = t + 1; u < lists_.size(); ++u) {
        rest += priced_.sizings()[u].bound();
        rest_prices += problem_.transformers[u].models.front().price;
    }
    std::vector<Partial> longer;
    for (const Partial& partial : partials)
        for (std::size_t w = 0; w < lists_[t].size(); ++w) {
            const Way& way = lists_[t][w];
            const double value = partial.value + way.value + rest;
            if (value > limit_ + cost_rounding) break;
            if (longer.size() >= most_partials || effort_.spent()) {
                value_seen_ = std::min(value_seen_, priced_.bound());
                break;
            }
            effort_.spend(2);
            Partial next{partial.value + way.value, partial.bought, partial.ways};
            add(next.bought, way.bought);
            if (covering_cost(next.bought) + rest_prices >= cost - cost_rounding) continue;
            next.ways.push_back(w);
            longer.push_back(std::move(next));
        }
    return longer;
}

void SpoolListing::settle(const Partial& partial, std::vector<std::optional<Proposal>>& best, double& cost) {
    if (covering_cost(partial.bought) >= cost - cost_rounding) return;
    if (effort_.spent()) {
        unsettled_ = std::min(unsettled_, covering_cost(partial.bought));
        return;
    }
    effort_.spend(20);
    const CostRange range = cost_.of(partial.bought);
    if (range.bound < range.cost - cost_rounding) unsettled_ = std::min(unsettled_, range.bound);
    if (range.cost >= cost - cost_rounding) return;
    cost = range.cost;
    for (std::size_t t = 0; t < lists_.size(); ++t)
        best[t] = lists_[t][partial.ways[t]].proposal;
}

void SpoolListing::improve(std::vector<std::optional<Proposal>>& best, double& cost) {
    for (std::size_t t = 0; t < lists_.size(); ++t) {
        const double others = priced_.bound() - priced_.sizings()[t].bound();
        Effort share = effort_.share(2 * (lists_.size() - t));
        list(t, limit_ - others, share);
        effort_.spend(share.used());
    }
    std::vector<Partial> partials{{0, Purchase{0, std::vector<std::vector<Length>>(totals_.size())}, {}}};
    for (std::size_t t = 0; t < lists_.size(); ++t)
        partials = extended(partials, t, cost);
    std::stable_sort(partials.begin(), partials.end(),
                     [](const Partial& a, const Partial& b) { return a.value < b.value; });
    for (const Partial& partial : partials)
        settle(partial, best, cost);
}

} // namespace rillwatt::search
