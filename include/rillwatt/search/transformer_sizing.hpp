#pragma once

#include "rillwatt/search/transformer_search.hpp"

#include <memory>

namespace rillwatt::search {

/// How the ways to serve a transformer are listed.
struct Listing {
    bool per_length = false;
    std::size_t cap = 0; ///< labels kept at a point; 0: all
    bool any_order = false;
};

/// Sizes one transformer, pass by pass, until its bound meets its cost.
///
/// Where each length may have its own cable, passes take turns. One looks for a good choice: a point keeps a
/// limited number of labels, those that differ by less than a tolerance count as one. The next bounds the
/// cost from below: there the label that stays takes over whatever the displaced one does better (volts,
/// current), so that every choice is represented by one that costs no more. From turn to turn a point keeps
/// more labels and the tolerance shrinks; in the last pass nothing is given away. It starts from one cable
/// for each run, which is found at once.
class TransformerSizing {
  public:
    TransformerSizing(const SizeProblem& problem, const TransformerProblem& transformer);

    /// Makes one more pass. False when there is no further pass to make.
    bool improve(Effort& effort);

    bool started() const { return pass_ > 0; }
    bool settled() const { return settled_; }
    const std::optional<Proposal>& best() const { return best_; }
    double cost() const { return cost_; }   ///< infinite while nothing was found
    double bound() const { return bound_; } ///< infinite when nothing can work
    const TransformerProblem& transformer() const { return transformer_; }

    /// All ways to serve the transformer for at most `limit`, cheapest first. None when the effort runs out
    /// before.
    std::unique_ptr<CandidateSource> source(double limit, const Listing& how, bool strict_spools,
                                            Effort& effort);

    Trial& trial() { return trial_; }

  private:
    void search_runs(const RunSearch& how, double limit, Effort& effort);
    std::vector<RunSearch> framed(const RunSearch& how, double limit) const;
    bool draws_steadily() const;
    bool weak_decides() const;
    void bound_rest(std::size_t r, RunSearch& search, Effort& effort);
    void search_one_run(std::size_t r, RunSearch& search, Effort& effort);
    void start_from_one_cable_per_run(Effort& effort);
    void look_for_choice(std::size_t cap, Effort& effort);
    void try_combinations(Effort& effort);
    void raise_bound(std::size_t cap, Effort& effort);
    void raise_bound_to(CandidateSource& search, Effort& effort);
    bool take_if_it_holds(const Candidate& candidate, Effort& effort);
    double least_price() const;

    const SizeProblem& problem_;
    const TransformerProblem& transformer_;
    Trial trial_;
    std::vector<std::vector<Supply>> supplies_; ///< of each run
    std::vector<RunLabels> runs_;
    std::vector<double> least_;                     ///< of each run's open lengths
    std::vector<std::optional<VoltPrices>> prices_; ///< of each run
    std::size_t pass_ = 0;
    bool settled_ = false;
    std::optional<Proposal> best_;
    double cost_;
    double bound_ = 0;
};

} // namespace rillwatt::search
