#pragma once

#include "rillwatt/search/candidate.hpp"
#include "rillwatt/search/run_labels.hpp"

#include <queue>
#include <span>

/// Joins the labels of a transformer's runs.
///
/// With `sag = s - g / VA * sum(t_q I_q)` the head of every run stands at `tap * sag`: one number couples all
/// runs. A label of a run therefore becomes an option "tap t, cables c" with the range of sags it allows and
/// the share `t * I(t * sag)` it adds to the sum. Combinations of a model and one option for each run are
/// looked at in order of their cost (best first, with the cheapest completion as bound), so that the first
/// one that holds is the cheapest. Where a weak supply counts, runs are coupled by a second number of that
/// kind, and an option has a range and a share for each of the two.
namespace rillwatt::search {

inline constexpr double sag_slack = 2e-7; ///< interpolation may err by less; the solver has the last word

/// The same at the loading limit: what the currents of a run close to collapse, all of them wrong the same
/// way, falsify a sag by. At the volts of lamps so much would keep open what is refuted.
inline constexpr double loading_sag_slack = 5e-6;

/// A run on a tap with one of its labels.
struct RunOption {
    double tap = 0;
    int label = 0; ///< index into RunLabels::labels
    double cost = 0;
    PerCase<double> low_sag{};
    double high_sag = 0; ///< at nominal supply
};

/// What holds for the options of a model in one case.
struct CaseTables {
    double least_sag = 0; ///< where the loading limit stands, or below which no option of some run works
    std::vector<std::vector<double>> least_share;              ///< for each run, on the sag grid
    std::vector<std::vector<std::pair<double, double>>> reach; ///< (low sag, least cost up to it), ascending
};

/// A model with the options its runs have under it.
struct ModelOptions {
    int model = 0;
    std::vector<std::vector<RunOption>> options; ///< for each run, by ascending cost
    PerCase<CaseTables> tables;
    std::vector<double> va_prices; ///< trial prices of a volt-ampere drawn from the transformer
    std::vector<std::vector<std::vector<double>>> weighed; ///< for each price and run, on the sag grid: least
                                                           ///< of cost plus price times volt-amperes
};

/// One model with one option for each run.
struct Combination {
    int model = 0; ///< index into the models' options
    double cost = 0;
    std::vector<int> options;
};

class TransformerSearch final : public CandidateSource {
  public:
    TransformerSearch(const SizeProblem& problem, const TransformerProblem& transformer,
                      const std::vector<RunLabels>& runs, Effort& effort);

    std::optional<Candidate> next() override;
    double bound() const override;

    /// A good choice for each model, found without a search: the cheapest option of each run at the sag they
    /// then have together. By ascending cost.
    std::vector<Candidate> quick_choices() const;

  private:
    /// Runs up to `depth` are decided, the last one by `option`; a `family` stands for that option and every
    /// later (dearer) one.
    struct State {
        double bound = 0;
        int model = 0;
        int depth = -1;
        int option = 0;
        int parent = -1; ///< index into trail_
        bool family = false;
        double cost = 0;       ///< of what is decided; of a family without the option itself
        double rest = 0;       ///< of a family: least cost of the runs that follow
        PerCase<double> sag{}; ///< greatest a completion can have; of a family its parent's
    };
    struct Later {
        bool operator()(const State& a, const State& b) const;
    };
    struct Step {
        int option;
        int parent;
    };

    std::optional<Combination> next_combination();
    std::optional<Combination> quick_choice(int model) const;
    Candidate candidate(const Combination& combination) const;
    Proposal proposal(const Combination& combination) const;
    const Label& label(const Combination& combination, std::size_t run) const;
    void add_model(int model);
    bool add_options(ModelOptions& set, std::size_t run) const;
    bool limit_current(RunOption& option, const Label& label, double limit, double ratio) const;
    void push_family(State family);
    void push_member(const State& family);
    void push_children(const State& state);
    bool find_bound(State& state) const;
    double weighed_bound(const State& state, const std::vector<int>& chosen) const;
    void weigh(ModelOptions& set) const;
    double least_va(const ModelOptions& set, std::size_t run, const RunOption& option, double sag) const;
    double highest_sag(const ModelOptions& set, const std::vector<int>& chosen, Supplied supplied) const;
    double least_sum(const ModelOptions& set, const std::vector<int>& chosen, double sag,
                     Supplied supplied) const;
    double lowest_sag(const ModelOptions& set, const std::vector<int>& chosen) const;
    bool holds(const ModelOptions& set, const std::vector<int>& chosen) const;
    double share(std::size_t run, const RunOption& option, double sag,
                 Supplied supplied = Supplied::nominal) const;
    double ratio(const ModelOptions& set, Supplied supplied = Supplied::nominal) const;
    std::span<const Supplied> cases() const;
    bool dominates(const ModelOptions& set, std::size_t run, const RunOption& a, const RunOption& b) const;
    bool tabulate_case(ModelOptions& set, Supplied supplied) const;
    bool allows(const PerCase<double>& sag, const RunOption& option, double slack = sag_slack) const;
    double least_cost(const ModelOptions& set, std::size_t run, const PerCase<double>& sag) const;
    std::vector<int> chosen_by(const State& state) const;

    const SizeProblem& problem_;
    const TransformerProblem& transformer_;
    const std::vector<RunLabels>& runs_;
    Effort& effort_;
    PerCase<std::vector<std::vector<CurvePower>>> powers_; ///< of each run's labels
    std::vector<double> most_amps_;                        ///< of each run
    std::vector<ModelOptions> models_;
    std::vector<Step> trail_;
    std::priority_queue<State, std::vector<State>, Later> open_;
};

} // namespace rillwatt::search
