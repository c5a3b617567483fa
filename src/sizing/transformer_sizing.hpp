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
class TransformerSizing {
  public:
    TransformerSizing(const SizeProblem& problem, const TransformerProblem& transformer);

    /// Makes one more pass. False when there is no further pass to make.
    bool improve(Effort& effort);

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
    void look_for_choice(Effort& effort);
    void raise_bound(double tolerance, Effort& effort);
    bool take_if_it_holds(const Candidate& candidate);
    double least_price() const;

    const SizeProblem& problem_;
    const TransformerProblem& transformer_;
    Trial trial_;
    std::vector<RunLabels> runs_;
    std::vector<double> least_;                      ///< of each run's open lengths
    std::vector<std::optional<Corridor>> corridors_; ///< of each run, from its last relaxed search
    std::size_t pass_ = 0;
    bool settled_ = false;
    std::optional<Proposal> best_;
    double cost_;
    double bound_ = 0;
};

} // namespace rillwatt::sizing
