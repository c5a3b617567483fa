#pragma once

#include "rillwatt/limits/breach.hpp"
#include "rillwatt/search/problem.hpp"
#include "rillwatt/solver/network.hpp"

#include <optional>
#include <vector>

namespace rillwatt::search {

/// One complete choice for a transformer.
struct Proposal {
    int model = 0;                        ///< index into TransformerProblem::models
    std::vector<double> taps;             ///< one for each run
    std::vector<std::vector<int>> cables; ///< for each run, the cable of each of its nodes
    std::vector<int> link_cables;         ///< one for each link
};

/// What the solver says of a proposal: the worst limit that it breaks, if any.
struct Verdict {
    bool feasible = false;
    BreachKind breach = BreachKind::none;
    int node = -1;      ///< lamp or length concerned, of the circuit
    int run = -1;       ///< run concerned
    int link = -1;      ///< link concerned, of the circuit
    double found = 0;   ///< volts, amperes or ratio found there
    double allowed = 0; ///< what it may be
    bool weak = false;  ///< found on a weak supply
};

/// Puts proposals before the real solver on a weak supply, where the low ends of the windows alone count.
class WeakTrial {
  public:
    WeakTrial(const SizeProblem& problem, const TransformerProblem& transformer);

    /// Solves the proposal and looks for the lamp that lies deepest below its window.
    Verdict judge(const Proposal& proposal);

    const NetworkSolution& solution() const { return solution_; } ///< of what was judged last

  private:
    void load(const Proposal& proposal);

    const SizeProblem& problem_;
    const TransformerProblem& transformer_;
    const TransformerCircuit& circuit_;
    Network network_;
    Workspace workspace_;
    NetworkSolution solution_;
};

/// Puts proposals before the real solver.
class Trial {
  public:
    Trial(const SizeProblem& problem, const TransformerProblem& transformer);

    /// Solves the proposal and looks for the first limit it breaks: no operating point, lamps (worst first),
    /// cables, runs, transformer; then, where it counts, the lamps on a weak supply.
    Verdict judge(const Proposal& proposal);

    /// Loads the proposal into the network without solving it.
    void load(const Proposal& proposal);

    /// Looks for broken limits in what the last `solve` of the loaded proposal found.
    Verdict inspect() const;

    /// Whether what the last `solve` found keeps every ampacity, output and loading limit.
    bool carries() const;

    /// Steps of a search that take about as long as `judge` does.
    std::size_t steps() const;

    Network& network() { return network_; }
    bool solve() { return rillwatt::solve(network_, workspace_, solution_); }
    const NetworkSolution& solution() const { return solution_; }
    /// Of the last proposal judged, if it holds at nominal supply; null where a weak one does not count.
    const NetworkSolution* weak_solution() const { return weak_ ? &weak_->solution() : nullptr; }

  private:
    const SizeProblem& problem_;
    const TransformerProblem& transformer_;
    TransformerCircuit circuit_; ///< with what the loaded proposal chooses
    Network network_;
    Workspace workspace_;
    NetworkSolution solution_;
    std::optional<WeakTrial> weak_;
};

/// Whether no chosen length is thicker than the chosen one that feeds it, where the options ask for that.
bool keeps_order(const SizeProblem& problem, const TransformerProblem& transformer, const Proposal& proposal);

/// Price of the open lengths and of the transformer, spools at their price by length.
double linear_cost(const SizeProblem& problem, const TransformerProblem& transformer,
                   const Proposal& proposal);

} // namespace rillwatt::search
