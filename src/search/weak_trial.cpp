#include "rillwatt/limits/standing.hpp"
#include "rillwatt/search/trial.hpp"

namespace rillwatt::search {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

} // namespace

WeakTrial::WeakTrial(const SizeProblem& problem, const TransformerProblem& transformer)
    : problem_(problem), transformer_(transformer),
      circuit_(problem.circuits->transformers[transformer.circuit]),
      network_(make_network(circuit_, *problem.weak)) {}

void WeakTrial::load(const Proposal& proposal) {
    const OperatingCase& weak = *problem_.weak;
    const auto ohms = [&](int cable, Metres length) {
        return cable_ohms(*problem_.cables[at(cable)].type, length, weak.conductor);
    };
    set_transformer(network_, *transformer_.models[at(proposal.model)].type, circuit_.supply, weak);
    for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
        const RunProblem& run = transformer_.runs[r];
        network_.tap[at(run.run)] = proposal.taps[r];
        for (std::size_t i = 0; i < run.nodes.size(); ++i)
            network_.ohms[at(run.nodes[i].node)] = ohms(proposal.cables[r][i], Metres(run.nodes[i].metres));
    }
    for (std::size_t k = 0; k < proposal.link_cables.size(); ++k)
        network_.links[k].ohms = ohms(proposal.link_cables[k], *circuit_.links[k].length);
}

Verdict WeakTrial::judge(const Proposal& proposal) {
    load(proposal);
    if (!solve(network_, workspace_, solution_))
        return {.breach = BreachKind::no_operating_point, .weak = true};
    Verdict worst{.feasible = true, .weak = true};
    for (const RunProblem& run : transformer_.runs)
        for (const RunNode& node : run.nodes) {
            if (!node.lamp) continue;
            const FixtureType& type = *circuit_.nodes[at(node.node)].fixture;
            const Standing standing = against_low_end(type, Volts(solution_.lamp_volts[at(node.node)]));
            if (!standing.broken() || standing.beyond() <= worst.allowed - worst.found) continue;
            worst = {.breach = BreachKind::lamp_low,
                     .node = node.node,
                     .run = run.run,
                     .found = standing.value,
                     .allowed = standing.limit,
                     .weak = true};
        }
    return worst;
}

} // namespace rillwatt::search
