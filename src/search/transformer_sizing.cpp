#include "rillwatt/search/transformer_sizing.hpp"

#include "rillwatt/search/meshed_search.hpp"
#include "rillwatt/search/steady_labels.hpp"
#include "rillwatt/search/supply.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace rillwatt::search {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double cost_rounding = 1e-9;
constexpr std::size_t all_labels = 1'000'000; ///< more than a point ever has

/// What a pass is for, how many labels it keeps at a point, and which transformers it is made for: where all
/// runs draw steadily, volt prices bound so well that nothing need be gained by small steps.
struct Pass {
    enum For { all, steady, unsteady };

    bool bounds;
    std::size_t cap;
    For transformers;
};
constexpr std::array<Pass, 7> passes = {{{false, 30, Pass::all},
                                         {false, 60, Pass::steady},
                                         {true, 100, Pass::unsteady},
                                         {false, 150, Pass::unsteady},
                                         {true, 600, Pass::unsteady},
                                         {true, 4000, Pass::all},
                                         {true, all_labels, Pass::all}}};
constexpr std::size_t spool_cap = 150;        ///< labels kept at a point before whole spools are looked at
constexpr std::size_t brief_search = 20'000;  ///< effort for each run to combine what was found
constexpr std::size_t bound_search = 100'000; ///< and to bound it
constexpr int tries_per_pass = 40;            ///< candidates put before the solver once the bound is known

} // namespace

TransformerSizing::TransformerSizing(const SizeProblem& problem, const TransformerProblem& transformer)
    : problem_(problem), transformer_(transformer), trial_(problem, transformer), cost_(infinity) {
    bound_ = least_price();
    prices_.resize(transformer_.runs.size());
    for (const RunProblem& run : transformer_.runs) {
        least_.push_back(least_cost(problem_, run));
        supplies_.push_back(supplies_of(problem_, transformer_, run));
        bound_ += least_.back();
    }
}

/// Of the models that can carry the lamps; infinite when none can.
double TransformerSizing::least_price() const {
    const double va = least_lamp_va(transformer_);
    for (const Model& model : transformer_.models)
        if (carries(model, va, problem_.options.loading)) return model.price;
    return infinity;
}

/// Bounds the rest of a run for its next search, once there is a better choice to compare with than one cable
/// for each run.
void TransformerSizing::bound_rest(std::size_t r, RunSearch& search, Effort& effort) {
    constexpr std::size_t nodes_per_step = 4;
    if (cost_ == infinity || pass_ <= 1) return;
    if (!prices_[r]) {
        const LabelFrame& frame = search.frame;
        prices_[r].emplace(problem_, transformer_.runs[r], frame.weak() ? Supplied::weak : Supplied::nominal,
                           frame.weak() ? frame.weak_top : frame.top, frame.cost_limit);
        effort.spend(prices_[r]->looked_at() / nodes_per_step);
        least_[r] = std::max(least_[r], prices_[r]->bound());
    }
    search.prices = &*prices_[r];
}

/// Searches one run. A relaxed search with a cable for each length leaves behind a better least cost of the
/// run.
void TransformerSizing::search_one_run(std::size_t r, RunSearch& search, Effort& effort) {
    if (search.per_length) bound_rest(r, search, effort);
    runs_.push_back(search_run(problem_, transformer_.runs[r], search, effort));
    const RunLabels& found = runs_.back();
    const bool bounds = search.frame.relax && search.per_length && found.complete && !found.labels.empty();
    if (bounds &&
        search.any_order == problem_.options.any_order) // else it searched a part of what is allowed
        least_[r] = std::max(least_[r], found.labels.front().cost);
}

/// Whether what keeps the low end of every window on a weak supply does so at nominal supply too: where no
/// margin is asked for and no current rises with the volts, all volts are lower on a weak supply.
bool TransformerSizing::weak_decides() const {
    const bool rising =
        std::any_of(transformer_.runs.begin(), transformer_.runs.end(), [](const RunProblem& run) {
            return std::any_of(run.nodes.begin(), run.nodes.end(),
                               [](const RunNode& node) { return node.lamp && rises(*node.lamp); });
        });
    const bool colder = std::any_of(problem_.cables.begin(), problem_.cables.end(), [](const Cable& cable) {
        return cable.weak_ohms_per_metre < cable.ohms_per_metre;
    });
    return problem_.weak && problem_.options.above_low_end() <= Volts(0) && !rising && !colder;
}

/// The searches of the runs, without the models that are too dear for the limit. Where upper limits can bind
/// in one run, the greatest currents of all of them count, since they share the transformer.
std::vector<RunSearch> TransformerSizing::framed(const RunSearch& how, double limit) const {
    const double least = std::accumulate(least_.begin(), least_.end(), 0.0);
    std::vector<RunSearch> searches;
    bool two_sided = false;
    for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
        RunSearch search = how;
        search.supplies = supplies_[r];
        std::erase_if(search.supplies,
                      [&](const Supply& supply) { return supply.price + least > limit + cost_rounding; });
        frame_run(problem_, transformer_.runs[r], search);
        two_sided = two_sided || search.frame.two_sided;
        searches.push_back(std::move(search));
    }
    for (RunSearch& search : searches) {
        search.frame.two_sided = two_sided;
        search.frame.weak_decides = weak_decides();
    }
    return searches;
}

/// Whether the runs would all be searched with steady labels.
bool TransformerSizing::draws_steadily() const {
    const std::vector<RunSearch> searches = framed(RunSearch{}, cost_);
    for (std::size_t r = 0; r < searches.size(); ++r)
        if (!search::draws_steadily(transformer_.runs[r], searches[r].frame)) return false;
    return true;
}

void TransformerSizing::search_runs(const RunSearch& how, double limit, Effort& effort) {
    std::vector<RunSearch> searches = framed(how, limit);
    runs_.clear();
    for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
        const double others = least_price() + std::accumulate(least_.begin(), least_.end(), 0.0) - least_[r];
        searches[r].frame.cost_limit = limit - others + cost_rounding;
        search_one_run(r, searches[r], effort);
    }
}

std::unique_ptr<CandidateSource> TransformerSizing::source(double limit, const Listing& listing,
                                                           bool strict_spools, Effort& effort) {
    if (transformer_.meshed) return std::make_unique<MeshedSearch>(problem_, transformer_, effort);
    RunSearch how;
    how.per_length = listing.per_length;
    how.any_order = listing.any_order;
    how.frame.relax = true;
    if (how.per_length) { // prices so far were found for a tighter limit
        prices_.assign(prices_.size(), std::nullopt);
        how.frame.cap = spool_cap;
        search_runs(how, limit, effort);
    }
    how.frame.cap = listing.cap > 0 ? listing.cap : all_labels;
    how.frame.strict_volts = listing.cap == 0;
    how.frame.strict_spools = strict_spools;
    search_runs(how, limit, effort);
    for (const RunLabels& run : runs_)
        if (!run.complete) return nullptr;
    return std::make_unique<TransformerSearch>(problem_, transformer_, runs_, effort);
}

bool TransformerSizing::take_if_it_holds(const Candidate& candidate, Effort& effort) {
    const double cost = linear_cost(problem_, transformer_, candidate.proposal);
    if (cost >= cost_ - cost_rounding) return false;
    if (!keeps_order(problem_, transformer_, candidate.proposal)) return false;
    effort.spend(trial_.steps());
    if (!trial_.judge(candidate.proposal).feasible) return false;
    best_ = candidate.proposal;
    cost_ = cost;
    return true;
}

/// One cable for each run is quickly chosen, and all lengths of a run may have the same.
void TransformerSizing::start_from_one_cable_per_run(Effort& effort) {
    search_runs(RunSearch{}, cost_, effort);
    try_combinations(effort);
}

/// Few labels find more in the natural order, thicker towards the transformer, even where any order is
/// allowed.
void TransformerSizing::look_for_choice(std::size_t cap, Effort& effort) {
    constexpr std::size_t few_labels = 100;
    RunSearch how;
    how.per_length = true;
    how.any_order = problem_.options.any_order && cap > few_labels;
    how.frame.cap = cap;
    search_runs(how, cost_, effort);
    try_combinations(effort);
}

/// Puts what the labels found so far combine to before the solver, without looking for long.
void TransformerSizing::try_combinations(Effort& effort) {
    Effort brief = effort.share(1);
    brief.limit_to(brief_search * transformer_.runs.size());
    TransformerSearch search(problem_, transformer_, runs_, brief);
    for (const Candidate& candidate : search.quick_choices())
        take_if_it_holds(candidate, effort);
    for (int tries = 0; tries < tries_per_pass; ++tries) {
        const auto candidate = search.next();
        if (!candidate || take_if_it_holds(*candidate, effort)) break;
    }
    effort.spend(brief.used());
}

void TransformerSizing::raise_bound(std::size_t cap, Effort& effort) {
    RunSearch how;
    how.per_length = problem_.options.per_length;
    how.any_order = problem_.options.any_order;
    how.frame.relax = true;
    how.frame.cap = cap;
    how.frame.strict_volts = cap == all_labels;
    if (transformer_.meshed) {
        MeshedSearch search(problem_, transformer_, effort);
        raise_bound_to(search, effort);
        return;
    }
    search_runs(how, cost_, effort);
    for (const RunLabels& run : runs_)
        if (!run.complete) return;
    Effort combining = effort.share(1);
    if (cap != all_labels) combining.limit_to(bound_search * transformer_.runs.size());
    TransformerSearch search(problem_, transformer_, runs_, combining);
    raise_bound_to(search, combining);
    effort.spend(combining.used());
}

/// The bound is the cost of the cheapest candidate that has not been refuted.
void TransformerSizing::raise_bound_to(CandidateSource& search, Effort& effort) {
    bool open = false; // a candidate stood for others too and did not hold: the bound stays at its cost
    for (int tries = 0; !open || tries < tries_per_pass; tries += open) {
        const auto candidate = search.next();
        const double reached = candidate ? candidate->cost : effort.spent() ? search.bound() : infinity;
        if (!open) bound_ = std::max(bound_, std::min(reached, cost_));
        if (!candidate || reached >= cost_ - cost_rounding) break;
        take_if_it_holds(*candidate, effort);
        if (!candidate->exact && cost_ > candidate->cost + cost_rounding) open = true;
        if (!open && cost_ <= candidate->cost + cost_rounding) break;
    }
    settled_ = bound_ >= cost_ - cost_rounding;
}

bool TransformerSizing::improve(Effort& effort) {
    if (settled_ || pass_ >= passes.size()) return false;
    const bool one_pass = transformer_.meshed || !problem_.options.per_length;
    if (one_pass) pass_ = passes.size() - 1;
    if (pass_ == 0) start_from_one_cable_per_run(effort);
    const Pass::For other = draws_steadily() ? Pass::unsteady : Pass::steady;
    while (passes[pass_].transformers == other)
        ++pass_;
    const Pass& pass = passes[pass_++];
    if (pass.bounds)
        raise_bound(pass.cap, effort);
    else
        look_for_choice(pass.cap, effort);
    if (bound_ == infinity) settled_ = true;
    return true;
}

} // namespace rillwatt::search
