#include "transformer_sizing.hpp"

#include "meshed_search.hpp"
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace rillwatt::sizing {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double cost_rounding = 1e-9;
constexpr double no_comparison = 1; ///< a tolerance at which currents are not compared
constexpr std::array<double, 4> tolerances = {no_comparison, 2e-3, 1e-4, 0};
constexpr std::size_t quick_cap = 150; ///< labels kept at a point while looking for a choice
constexpr std::size_t bound_cap = 800; ///< and while bounding
constexpr int tries_per_pass = 40;     ///< candidates put before the solver once the bound is known

} // namespace

TransformerSizing::TransformerSizing(const SizeProblem& problem, const TransformerProblem& transformer)
    : problem_(problem), transformer_(transformer), trial_(problem, transformer), cost_(infinity) {
    bound_ = least_price();
    corridors_.resize(transformer_.runs.size());
    for (const RunProblem& run : transformer_.runs) {
        least_.push_back(least_cost(problem_, run));
        bound_ += least_.back();
    }
}

double TransformerSizing::least_price() const {
    double least = infinity;
    for (const Model& model : transformer_.models)
        least = std::min(least, model.price);
    return least;
}

/// Searches one run. A relaxed search with a cable for each length leaves behind a better least cost of the
/// run and the corridor for the next one.
void TransformerSizing::search_one_run(std::size_t r, RunSearch search, Effort& effort) {
    const RunProblem& run = transformer_.runs[r];
    search.per_length = problem_.options.per_length;
    search.any_order = problem_.options.any_order;
    frame_run(problem_, transformer_, run, search.frame);
    const bool leads = search.frame.relax && search.per_length;
    std::optional<Corridor> record;
    if (leads) record.emplace(run.nodes.size(), search.frame.floor, search.frame.top);
    if (leads && corridors_[r]) search.corridor = &*corridors_[r];
    search.record = record ? &*record : nullptr;
    runs_.push_back(search_run(problem_, run, search, effort));
    const RunLabels& found = runs_.back();
    if (!leads || !found.complete || found.labels.empty()) return;
    least_[r] = std::max(least_[r], found.labels.front().cost);
    corridors_[r] = std::move(record);
}

void TransformerSizing::search_runs(const RunSearch& how, double limit, Effort& effort) {
    runs_.clear();
    for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
        const double others = least_price() + std::accumulate(least_.begin(), least_.end(), 0.0) - least_[r];
        RunSearch search = how;
        search.frame.cost_limit = limit - others + cost_rounding;
        search_one_run(r, search, effort);
    }
}

std::unique_ptr<CandidateSource> TransformerSizing::source(double limit, bool strict_spools, Effort& effort) {
    if (transformer_.meshed) return std::make_unique<MeshedSearch>(problem_, transformer_, effort);
    RunSearch how;
    how.frame.relax = true;
    how.frame.cap = bound_cap;
    if (problem_.options.per_length) { // corridors so far were drawn for a tighter limit
        corridors_.assign(corridors_.size(), std::nullopt);
        how.frame.tolerance = no_comparison;
        search_runs(how, limit, effort);
        how.frame.tolerance = 0;
    }
    how.frame.strict_spools = strict_spools;
    search_runs(how, limit, effort);
    return std::make_unique<TransformerSearch>(problem_, transformer_, runs_, effort);
}

bool TransformerSizing::take_if_it_holds(const Candidate& candidate) {
    const double cost = linear_cost(problem_, transformer_, candidate.proposal);
    if (cost >= cost_ - cost_rounding) return false;
    if (!trial_.judge(candidate.proposal).feasible) return false;
    best_ = candidate.proposal;
    cost_ = cost;
    return true;
}

void TransformerSizing::look_for_choice(Effort& effort) {
    RunSearch how;
    how.frame.tolerance = no_comparison;
    how.frame.cap = quick_cap;
    search_runs(how, infinity, effort);
    TransformerSearch search(problem_, transformer_, runs_, effort);
    for (int tries = 0; tries < tries_per_pass; ++tries) {
        const auto candidate = search.next();
        if (!candidate || take_if_it_holds(*candidate)) return;
    }
}

void TransformerSizing::raise_bound(double tolerance, Effort& effort) {
    RunSearch how;
    how.frame.relax = true;
    how.frame.tolerance = tolerance;
    how.frame.cap = bound_cap;
    std::unique_ptr<CandidateSource> search;
    if (transformer_.meshed) {
        search = std::make_unique<MeshedSearch>(problem_, transformer_, effort);
    } else {
        search_runs(how, cost_, effort);
        for (const RunLabels& run : runs_)
            if (!run.complete) return;
        search = std::make_unique<TransformerSearch>(problem_, transformer_, runs_, effort);
    }
    bool open = false; // a candidate stood for others too and did not hold: the bound stays at its cost
    for (int tries = 0; !open || tries < tries_per_pass; tries += open) {
        const auto candidate = search->next();
        const double reached = candidate ? candidate->cost : effort.spent() ? search->bound() : infinity;
        if (!open) bound_ = std::max(bound_, std::min(reached, cost_));
        if (!candidate || reached >= cost_ - cost_rounding) break;
        take_if_it_holds(*candidate);
        if (!candidate->exact && cost_ > candidate->cost + cost_rounding) open = true;
        if (!open && cost_ <= candidate->cost + cost_rounding) break;
    }
    if (!effort.spent() || bound_ >= cost_ - cost_rounding) settled_ = bound_ >= cost_ - cost_rounding;
}

bool TransformerSizing::improve(Effort& effort) {
    if (settled_ || pass_ > tolerances.size()) return false;
    const bool one_pass = transformer_.meshed || !problem_.options.per_length;
    if (pass_ == 0 && !one_pass) {
        look_for_choice(effort);
    } else {
        raise_bound(one_pass ? 0 : tolerances[pass_ - 1], effort);
        if (one_pass) pass_ = tolerances.size();
    }
    ++pass_;
    if (bound_ == infinity) settled_ = true;
    return true;
}

} // namespace rillwatt::sizing
