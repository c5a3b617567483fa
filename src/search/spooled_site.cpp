#include "rillwatt/search/spooled_site.hpp"

#include <algorithm>
#include <numeric>

namespace rillwatt::search {

namespace {

constexpr double cost_rounding = 1e-9;
constexpr double stride = 1.2; ///< of a subgradient step, in distances to what is known
constexpr int steps_for_class = 6;
constexpr std::size_t swaps_for_start = 20'000;
constexpr std::size_t share_of_pricing = 12; ///< part of the effort for one priced site

/// Metres of each spooled cable in a choice.
std::vector<double> laid_metres(const SizeProblem& problem,
                                const std::vector<std::optional<Proposal>>& proposals) {
    Purchase bought{0, std::vector<std::vector<Length>>(problem.spools.size())};
    for (std::size_t t = 0; t < proposals.size(); ++t)
        add(bought, purchase_of(problem, problem.transformers[t], *proposals[t]));
    std::vector<double> metres;
    for (const auto& pieces : bought.pieces)
        metres.push_back(metres_of(std::accumulate(pieces.begin(), pieces.end(), Length{0})));
    return metres;
}

bool complete(const std::vector<std::optional<Proposal>>& proposals) {
    return std::all_of(proposals.begin(), proposals.end(), [](const auto& one) { return one.has_value(); });
}

} // namespace

SpooledSite::SpooledSite(const SizeProblem& problem, PricedSite& linear, Effort& effort)
    : problem_(problem), linear_(linear), effort_(effort), cost_(problem), classes_(problem),
      swaps_(problem, effort) {}

bool SpooledSite::proven(const SiteAnswer& answer) const {
    return answer.bound >= answer.cost - cost_rounding;
}

void SpooledSite::raise_bound(SiteAnswer& answer) {
    classes_.drop(answer.cost - cost_rounding);
    if (classes_.listed()) answer.bound = std::max(answer.bound, classes_.bound_or(answer.cost));
}

/// Takes the choice of a priced site as an answer if it is better, and what its bound says of all classes.
void SpooledSite::consider(PricedSite& priced, SiteAnswer& answer) {
    classes_.add(priced.prices(), priced.bound());
    const auto proposals = priced.proposals();
    if (!complete(proposals)) return;
    Purchase bought;
    for (std::size_t t = 0; t < proposals.size(); ++t)
        add(bought, purchase_of(problem_, problem_.transformers[t], *proposals[t]));
    const double cost = cost_.of(bought).cost;
    if (cost >= answer.cost - cost_rounding) return;
    answer.cost = cost;
    answer.proposals = proposals;
}

void SpooledSite::anneal(const std::vector<std::optional<Proposal>>& start, SiteAnswer& answer) {
    if (complete(start)) swaps_.anneal(start, swaps_for_start, answer.proposals, answer.cost);
}

/// Where spooled cable is free the bound is what transformers and cable by length cost at least.
void SpooledSite::list_classes(const SiteAnswer& answer) {
    priced_.push_back(std::make_unique<PricedSite>(problem_, SpoolPrices(problem_.spools.size(), 0)));
    PricedSite& free = *priced_.back();
    free.search(effort_.used() + effort_.limit() / share_of_pricing, effort_);
    classes_.list(answer.cost - cost_rounding, free.bound());
    classes_.add(free.prices(), free.bound());
}

/// Prices moved towards cable that is laid beyond the room, away from cable that leaves room.
SpoolPrices SpooledSite::step(const PricedSite& priced, const std::vector<double>& room,
                              double distance) const {
    const std::vector<double> laid = laid_metres(problem_, priced.proposals());
    double square = 0;
    for (std::size_t k = 0; k < room.size(); ++k)
        square += (laid[k] - room[k]) * (laid[k] - room[k]);
    SpoolPrices prices = priced.prices();
    for (std::size_t k = 0; k < room.size(); ++k)
        if (square > 0) prices[k] += stride * distance / square * (laid[k] - room[k]);
    for (double& price : prices)
        price = std::max(price, 0.0);
    return prices;
}

/// Moves the prices until the class is out, or there is wiring with no more metres than it has room for.
void SpooledSite::work_on_class(std::size_t index, SiteAnswer& answer) {
    const std::vector<double> room = classes_.room(index);
    const PricedSite* from = &linear_;
    for (const auto& priced : priced_)
        if (classes_.class_bound(index, priced->prices(), priced->bound()) >
            classes_.class_bound(index, from->prices(), from->bound()))
            from = priced.get();
    for (int number = 0; number < steps_for_class && !effort_.spent(); ++number) {
        if (!complete(from->proposals())) break;
        const double distance = answer.cost - classes_.class_bound(index, from->prices(), from->bound());
        const std::vector<double> laid = laid_metres(problem_, from->proposals());
        bool fits = true;
        for (std::size_t k = 0; k < room.size(); ++k)
            fits = fits && laid[k] <= room[k];
        if (fits) break;
        priced_.push_back(std::make_unique<PricedSite>(problem_, step(*from, room, distance)));
        from = priced_.back().get();
        priced_.back()->search(effort_.used() + effort_.limit() / share_of_pricing, effort_);
        consider(*priced_.back(), answer);
        if (classes_.bound(index) >= answer.cost - cost_rounding) return;
    }
    anneal(from->proposals(), answer);
    classes_.set_aside(index);
}

/// The prices at which the fewest choices can still be better, by how far values reach above the bound.
PricedSite& SpooledSite::sharpest(const SiteAnswer& answer) {
    PricedSite* best = &linear_;
    if (!classes_.listed()) return *best;
    const auto reach = [&](const PricedSite& priced) {
        return classes_.value_needed(priced.prices(), answer.cost) - priced.bound();
    };
    for (const auto& priced : priced_)
        if (reach(*priced) < reach(*best)) best = priced.get();
    return *best;
}

void SpooledSite::list_ways(SiteAnswer& answer, std::size_t effort) {
    PricedSite& priced = sharpest(answer);
    double needed = classes_.value_needed(priced.prices(), answer.cost);
    double linear_base = problem_.typed_cost;
    for (const SpoolCable& spool : problem_.spools)
        for (const Length piece : spool.typed)
            linear_base += spool.price * metres_of(piece);
    if (!classes_.listed()) needed = answer.cost - linear_base;
    Effort share = effort_.share(1);
    share.limit_to(effort);
    SpoolListing listing(problem_, priced, cost_, needed, share);
    listing.improve(answer.proposals, answer.cost);
    effort_.spend(share.used());
    double bound = linear_base + listing.value_seen();
    if (listing.value_seen() >= needed)
        bound = answer.cost;
    else if (classes_.listed())
        bound = classes_.bound_above(priced.prices(), listing.value_seen(), answer.cost);
    answer.bound = std::max(answer.bound, std::min({bound, listing.unsettled(), answer.cost}));
}

/// Whether a look at every choice is likely to be over soon.
bool SpooledSite::few_choices() const {
    constexpr std::size_t few = 14; // open lengths with a cable each
    std::size_t open = 0;
    for (const TransformerProblem& transformer : problem_.transformers)
        for (const RunProblem& run : transformer.runs)
            for (const RunNode& node : run.nodes)
                open += node.typed < 0;
    return !problem_.options.per_length || open <= few;
}

void SpooledSite::improve(SiteAnswer& answer) {
    list_classes(answer);
    classes_.add(linear_.prices(), linear_.bound());
    raise_bound(answer);
    if (!proven(answer) && few_choices()) list_ways(answer, effort_.limit() / 4);
    if (!proven(answer)) anneal(answer.proposals, answer);
    raise_bound(answer);
    while (!proven(answer) && classes_.worth_work() && effort_.used() < effort_.limit() / 8 * 7 &&
           !effort_.spent()) {
        work_on_class(classes_.cheapest(), answer);
        raise_bound(answer);
    }
    if (!proven(answer) && !effort_.spent()) list_ways(answer, effort_.limit());
}

} // namespace rillwatt::search
