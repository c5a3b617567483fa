#include "tap_choice.hpp"

#include <algorithm>

namespace rillwatt::sizing {

namespace {

constexpr int rounds = 3;
constexpr double most_room = 100; ///< of a run without lamps
constexpr double worth_it = 1e-6; ///< volts of room gained

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Measures the room a proposal leaves.
class Room {
  public:
    Room(const SizeProblem& problem, const TransformerProblem& transformer, const SiteSettings& settings)
        : problem_(problem), transformer_(transformer),
          circuit_(problem.circuits->transformers[transformer.circuit]), cases_(operating_cases(settings)),
          network_(make_network(circuit_, cases_[1])) {}

    double of(const Proposal& proposal) {
        load(proposal);
        if (!solve(network_, workspace_, solution_)) return -1e9;
        const Model& model = transformer_.models[at(proposal.model)];
        const double strong = cases_[2].supply_factor * model.supply_ratio;
        double sum = 0;
        for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
            double room = most_room;
            for (const RunNode& node : transformer_.runs[r].nodes) {
                if (!node.lamp) continue;
                const double weak_volts = solution_.lamp_volts[at(node.node)];
                room = std::min(
                    {room, weak_volts - node.lamp->low, node.lamp->high - strong * proposal.taps[r]});
            }
            sum += room;
        }
        return sum;
    }

  private:
    void load(const Proposal& proposal) {
        const OperatingCase& weak = cases_[1];
        set_transformer(network_, *transformer_.models[at(proposal.model)].type, circuit_.supply, weak);
        for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
            const RunProblem& run = transformer_.runs[r];
            network_.tap[at(run.run)] = proposal.taps[r];
            for (std::size_t i = 0; i < run.nodes.size(); ++i)
                network_.ohms[at(run.nodes[i].node)] =
                    cable_ohms(*problem_.cables[at(proposal.cables[r][i])].type, Metres(run.nodes[i].metres),
                               weak.conductor);
        }
        for (std::size_t k = 0; k < proposal.link_cables.size(); ++k)
            network_.links[k].ohms = cable_ohms(*problem_.cables[at(proposal.link_cables[k])].type,
                                                *circuit_.links[k].length, weak.conductor);
    }

    const SizeProblem& problem_;
    const TransformerProblem& transformer_;
    const TransformerCircuit& circuit_;
    std::vector<OperatingCase> cases_;
    Network network_;
    Workspace workspace_;
    NetworkSolution solution_;
};

} // namespace

void choose_roomiest_taps(const SizeProblem& problem, const TransformerProblem& transformer,
                          const SiteSettings& settings, Trial& trial, Proposal& proposal, Effort& effort) {
    Room room(problem, transformer, settings);
    double most = room.of(proposal);
    bool moved = true;
    for (int round = 0; round < rounds && moved; ++round) {
        moved = false;
        for (std::size_t r = 0; r < transformer.runs.size(); ++r) {
            const Model& model = transformer.models[at(proposal.model)];
            for (const double tap : taps_for(model, transformer.runs[r])) {
                if (effort.spent()) return;
                effort.spend(2 * trial.steps());
                Proposal other = proposal;
                other.taps[r] = tap;
                const double left = room.of(other);
                if (left < most + worth_it || !trial.judge(other).feasible) continue;
                most = left;
                proposal = other;
                moved = true;
            }
        }
    }
}

} // namespace rillwatt::sizing
