#include "rillwatt/search/trial.hpp"

namespace rillwatt::search {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

} // namespace

Trial::Trial(const SizeProblem& problem, const TransformerProblem& transformer)
    : problem_(problem), transformer_(transformer),
      circuit_(problem.circuits->transformers[transformer.circuit]),
      network_(make_network(circuit_, problem.nominal)) {
    if (problem.weak) weak_.emplace(problem, transformer);
}

void Trial::load(const Proposal& proposal) {
    circuit_.type = transformer_.models[at(proposal.model)].type;
    for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
        const RunProblem& run = transformer_.runs[r];
        network_.tap[at(run.run)] = proposal.taps[r];
        for (std::size_t i = 0; i < run.nodes.size(); ++i) {
            const CableType& cable = *problem_.cables[at(proposal.cables[r][i])].type;
            const std::size_t node = at(run.nodes[i].node);
            circuit_.nodes[node].cable = &cable;
            network_.ohms[node] = cable_ohms(cable, Metres(run.nodes[i].metres), problem_.nominal.conductor);
        }
    }
    for (std::size_t k = 0; k < proposal.link_cables.size(); ++k) {
        CircuitLink& link = circuit_.links[k];
        link.cable = problem_.cables[at(proposal.link_cables[k])].type;
        network_.links[k].ohms = cable_ohms(*link.cable, *link.length, problem_.nominal.conductor);
    }
    set_transformer(network_, *circuit_.type, circuit_.supply, problem_.nominal);
}

Verdict Trial::judge(const Proposal& proposal) {
    load(proposal);
    if (!solve()) return {.breach = BreachKind::no_operating_point};
    const Verdict nominal = inspect();
    return nominal.feasible && weak_ ? weak_->judge(proposal) : nominal;
}

Verdict Trial::inspect() const {
    const auto worst = worst_breach(circuit_, solution_, problem_.options.margins());
    if (!worst) return {.feasible = true};
    return {.breach = worst->kind,
            .node = worst->node,
            .run = worst->run,
            .link = worst->link,
            .found = worst->value,
            .allowed = worst->limit};
}

bool Trial::carries() const { return carries_load(circuit_, solution_, problem_.options.margins()); }

bool keeps_order(const SizeProblem& problem, const TransformerProblem& transformer,
                 const Proposal& proposal) {
    if (!problem.options.per_length || problem.options.any_order) return true;
    for (std::size_t r = 0; r < transformer.runs.size(); ++r) {
        const auto& nodes = transformer.runs[r].nodes;
        for (std::size_t i = 0; i < nodes.size(); ++i) {
            const int feed = nodes[i].parent;
            if (feed < 0 || nodes[i].typed >= 0 || nodes[at(feed)].typed >= 0) continue;
            if (problem.cables[at(proposal.cables[r][i])].thickness >
                problem.cables[at(proposal.cables[r][at(feed)])].thickness)
                return false;
        }
    }
    return true;
}

std::size_t Trial::steps() const {
    const std::size_t nodes = network_.node_count();
    return (weak_ ? 2 : 1) * (10 + nodes / 2 + 3 * nodes * network_.links.size());
}

double linear_cost(const SizeProblem& problem, const TransformerProblem& transformer,
                   const Proposal& proposal) {
    double cost = transformer.models[at(proposal.model)].price;
    for (std::size_t r = 0; r < transformer.runs.size(); ++r)
        for (std::size_t i = 0; i < transformer.runs[r].nodes.size(); ++i) {
            const RunNode& node = transformer.runs[r].nodes[i];
            if (node.typed < 0) cost += problem.cables[at(proposal.cables[r][i])].price * node.metres;
        }
    const TransformerCircuit& circuit = problem.circuits->transformers[transformer.circuit];
    for (std::size_t k = 0; k < proposal.link_cables.size(); ++k)
        if (transformer.link_typed[k] < 0)
            cost += problem.cables[at(proposal.link_cables[k])].price * circuit.links[k].length->value();
    return cost;
}

} // namespace rillwatt::search
