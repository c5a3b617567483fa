#pragma once

#include "transformer_search.hpp"
#include <memory>

namespace rillwatt::sizing {

/// Sizes one transformer, pass by pass, until its bound meets its cost.
///
/// A first, quick pass looks for a good choice: labels are compared by cost and least volts alone. The passes
/// that follow bound the cost from below: there a label displaces another only where its current is smaller
/// up to a tolerance, and then takes over the smaller of the two, so that every choice displaced stays
/// represented by one that costs no more. The tolerance shrinks from pass to pass; at zero nothing is given
/// away.
///
/// Once a first bound is known, each model is searched by itself: what a model leaves for cable differs so
/// much from one to the next that bounds over all of them together would be wide.
class TransformerSizing {
    struct OneModel;

  public:
    TransformerSizing(const SizeProblem& problem, const TransformerProblem& transformer);
    TransformerSizing(TransformerSizing&&) noexcept;
    ~TransformerSizing();

    /// Makes one more pass. False when there is no further pass to make.
    bool improve(Effort& effort);

    bool started() const { return pass_ > 0; }
    bool settled() const { return settled_; }
    const std::optional<Proposal>& best() const { return best_; }
    double cost() const { return cost_; }   ///< infinite while nothing was found
    double bound() const { return bound_; } ///< infinite when nothing can work
    const TransformerProblem& transformer() const { return transformer_; }

    /// All ways to serve the transformer for at most `limit`, cheapest first.
    std::unique_ptr<CandidateSource> source(double limit, bool strict_spools, Effort& effort);

    Trial& trial() { return trial_; }

  private:
    RunSearch search_for(const RunProblem& run) const;
    void search_runs(const RunSearch& how, double limit, Effort& effort);
    void search_one_run(std::size_t r, RunSearch search, Effort& effort);
    void look_for_choice(double tolerance, Effort& effort);
    void raise_bound(double tolerance, Effort& effort);
    bool take_if_it_holds(const Candidate& candidate);
    double least_price() const;
    void part_models();
    void improve_each_model(Effort& effort);

    const SizeProblem& problem_;
    const TransformerProblem& transformer_;
    Trial trial_;
    std::vector<RunLabels> runs_;
    std::vector<double> least_;                      ///< of each run's open lengths
    std::vector<std::optional<Corridor>> corridors_; ///< of each run, from its last relaxed search
    std::vector<std::unique_ptr<OneModel>> models_;  ///< once each model is searched by itself
    std::size_t pass_ = 0;
    bool settled_ = false;
    std::optional<Proposal> best_;
    double cost_;
    double bound_ = 0;
};

} // namespace rillwatt::sizing
