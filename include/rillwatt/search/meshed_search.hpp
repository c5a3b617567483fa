#pragma once

#include "rillwatt/search/candidate.hpp"
#include "rillwatt/search/effort.hpp"

#include <queue>

namespace rillwatt::search {

/// All choices for a transformer whose circuit has rings, by ascending cost. In a ring a thicker cable may
/// lower the volts elsewhere, so nothing is concluded from one choice to another: each is handed out, and the
/// solver decides.
class MeshedSearch final : public CandidateSource {
  public:
    MeshedSearch(const SizeProblem& problem, const TransformerProblem& transformer, Effort& effort);

    std::optional<Candidate> next() override;
    double bound() const override;

  private:
    /// Something to choose: alternatives by ascending cost.
    struct Item {
        std::vector<std::pair<double, int>> alternatives;         ///< cost, cable
        std::vector<std::pair<std::size_t, std::size_t>> lengths; ///< (run, node) it applies to
        int link = -1;
    };
    struct State {
        double cost = 0;
        std::vector<int> picks; ///< model, then one for each item
        std::size_t last = 0;   ///< picks before this one may not be raised any more
    };
    struct Later {
        bool operator()(const State& a, const State& b) const;
    };

    void add_items();
    void add_item(Item item, double metres, double longest);
    double pick_cost(std::size_t place, int pick) const;
    std::size_t alternatives(std::size_t place) const;
    void push_successors(const State& state);
    Proposal base_proposal(const State& state) const;
    bool next_taps();
    bool taps_agree() const;
    bool start_taps();

    const SizeProblem& problem_;
    const TransformerProblem& transformer_;
    Effort& effort_;
    std::vector<Item> items_;
    std::priority_queue<State, std::vector<State>, Later> open_;
    std::optional<Proposal> current_; ///< its cables and model; taps are being gone through
    double current_cost_ = 0;
    std::vector<std::vector<double>> taps_; ///< for each run, highest first
    std::vector<std::size_t> tap_at_;
};

} // namespace rillwatt::search
