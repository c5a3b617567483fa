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

/// What a pass is for and how finely it compares currents.
struct Pass {
    bool bounds;
    double tolerance;
};
constexpr std::array<Pass, 7> passes = {{{false, no_comparison},
                                         {true, no_comparison},
                                         {false, 1e-3},
                                         {true, 1e-3},
                                         {false, 1e-4},
                                         {true, 1e-4},
                                         {true, 0}}};
constexpr std::size_t quick_cap = 100; ///< labels kept at a point in the first pass
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

/// A transformer with one of its models.
struct TransformerSizing::OneModel {
    OneModel(const SizeProblem& site, const TransformerProblem& all, std::size_t index)
        : model(static_cast<int>(index)), problem(all) {
        problem.models = {all.models[index]};
        sizing = std::make_unique<TransformerSizing>(site, problem);
    }

    int model;
    TransformerProblem problem;
    std::unique_ptr<TransformerSizing> sizing;
};

TransformerSizing::TransformerSizing(TransformerSizing&&) noexcept = default;
TransformerSizing::~TransformerSizing() = default;

/// Models that the bounds so far do not exclude.
void TransformerSizing::part_models() {
    for (std::size_t m = 0; m < transformer_.models.size(); ++m) {
        const double least =
            transformer_.models[m].price + std::accumulate(least_.begin(), least_.end(), 0.0);
        if (least >= cost_ - cost_rounding) continue;
        models_.push_back(std::make_unique<OneModel>(problem_, transformer_, m));
        models_.back()->sizing->pass_ = 1;
        models_.back()->sizing->bound_ = least;
        models_.back()->sizing->least_ = least_;
    }
}

void TransformerSizing::improve_each_model(Effort& effort) {
    double bound = cost_;
    std::size_t waiting = models_.size();
    for (const auto& one : models_) {
        TransformerSizing& sizing = *one->sizing;
        Effort share = effort.share(waiting--);
        if (sizing.bound_ >= cost_ - cost_rounding) sizing.settled_ = true;
        sizing.cost_ = std::min(sizing.cost_, cost_);
        sizing.improve(share);
        effort.spend(share.used());
        if (sizing.best_ && sizing.cost_ < cost_ - cost_rounding) {
            best_ = sizing.best_;
            best_->model = one->model;
            cost_ = sizing.cost_;
        }
        bound = std::min(bound, sizing.bound_);
    }
    bound_ = std::max(bound_, std::min(bound, cost_));
    settled_ = bound_ >= cost_ - cost_rounding;
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
    if (search.per_length && corridors_[r]) search.corridor = &*corridors_[r];
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

void TransformerSizing::look_for_choice(double tolerance, Effort& effort) {
    RunSearch how;
    how.frame.tolerance = tolerance;
    how.frame.cap = tolerance < no_comparison ? bound_cap : quick_cap;
    search_runs(how, cost_, effort);
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
    if (settled_ || pass_ >= passes.size()) return false;
    const bool one_pass = transformer_.meshed || !problem_.options.per_length;
    if (one_pass) pass_ = passes.size() - 1;
    const Pass& pass = passes[pass_++];
    if (!models_.empty()) {
        improve_each_model(effort);
        return true;
    }
    if (pass.bounds)
        raise_bound(pass.tolerance, effort);
    else
        look_for_choice(pass.tolerance, effort);
    if (bound_ == infinity) settled_ = true;
    if (!one_pass && pass.bounds && !settled_ && transformer_.models.size() > 1) {
        pass_ = 1; // the first bound, now for each model
        part_models();
    }
    return true;
}

} // namespace rillwatt::sizing
