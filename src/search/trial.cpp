#include "rillwatt/search/trial.hpp"

#include "rillwatt/check/limits.hpp"

#include <cmath>

namespace rillwatt::search {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

} // namespace

Trial::Trial(const SizeProblem& problem, const TransformerProblem& transformer)
    : problem_(problem), transformer_(transformer),
      circuit_(problem.circuits->transformers[transformer.circuit]),
      network_(make_network(circuit_, problem.nominal)) {}

void Trial::load(const Proposal& proposal) {
    const Model& model = transformer_.models[at(proposal.model)];
    set_transformer(network_, *model.type, circuit_.supply, problem_.nominal);
    for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
        const RunProblem& run = transformer_.runs[r];
        network_.tap[at(run.run)] = proposal.taps[r];
        for (std::size_t i = 0; i < run.nodes.size(); ++i) {
            const CableType& cable = *problem_.cables[at(proposal.cables[r][i])].type;
            network_.ohms[at(run.nodes[i].node)] =
                cable_ohms(cable, Metres(run.nodes[i].metres), problem_.nominal.conductor);
        }
    }
    for (std::size_t k = 0; k < proposal.link_cables.size(); ++k) {
        const CableType& cable = *problem_.cables[at(proposal.link_cables[k])].type;
        network_.links[k].ohms = cable_ohms(cable, *circuit_.links[k].length, problem_.nominal.conductor);
    }
}

Verdict Trial::judge(const Proposal& proposal) {
    load(proposal);
    if (!solve()) return {false, Breach::no_operating_point, -1, -1, 0, 0};
    return inspect(proposal);
}

Verdict Trial::worst_lamp() const {
    Verdict worst{true, Breach::none, -1, -1, 0, 0};
    double most = limit_slack;
    for (const RunProblem& run : transformer_.runs)
        for (const RunNode& node : run.nodes) {
            if (!node.lamp) continue;
            const double volts = solution_.lamp_volts[at(node.node)];
            const FixtureType& type = *circuit_.nodes[at(node.node)].fixture;
            const double low = (type.window_low + problem_.options.above_low_end()).value();
            const double high = (type.window_high - problem_.options.margin).value();
            if (low - volts > most) {
                most = low - volts;
                worst = {false, Breach::lamp_low, node.node, run.run, volts, low};
            }
            if (volts - high > most) {
                most = volts - high;
                worst = {false, Breach::lamp_high, node.node, run.run, volts, high};
            }
        }
    return worst;
}

Verdict Trial::worst_cable(const Proposal& proposal) const {
    Verdict worst{true, Breach::none, -1, -1, 0, 0};
    double most = limit_slack;
    const auto look = [&](double amps, int cable, int node, int run) {
        const double ampacity = problem_.cables[at(cable)].type->ampacity.value();
        if (std::abs(amps) - ampacity <= most) return;
        most = std::abs(amps) - ampacity;
        worst = {false, Breach::cable, node, run, std::abs(amps), ampacity};
    };
    for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
        const RunProblem& run = transformer_.runs[r];
        for (std::size_t i = 0; i < run.nodes.size(); ++i)
            look(solution_.branch_amps[at(run.nodes[i].node)], proposal.cables[r][i], run.nodes[i].node,
                 run.run);
    }
    for (std::size_t k = 0; k < proposal.link_cables.size(); ++k)
        look(solution_.link_amps[k], proposal.link_cables[k], circuit_.links[k].b,
             circuit_.nodes[at(circuit_.links[k].b)].run);
    return worst;
}

Verdict Trial::worst_run(const Model& model) const {
    const double limit = model.type->secondary_limit.value();
    Verdict worst{true, Breach::none, -1, -1, 0, 0};
    double most = limit_slack;
    for (std::size_t r = 0; r < solution_.run_amps.size(); ++r) {
        if (solution_.run_amps[r] - limit <= most) continue;
        most = solution_.run_amps[r] - limit;
        worst = {false, Breach::secondary, -1, static_cast<int>(r), solution_.run_amps[r], limit};
    }
    return worst;
}

Verdict Trial::loading(const Model& model) const {
    double load = 0;
    for (std::size_t r = 0; r < solution_.run_amps.size(); ++r)
        load += solution_.run_volts[r] * solution_.run_amps[r];
    const double share = load / model.type->va.value();
    const bool fits = share <= problem_.options.loading + limit_slack;
    return {fits, fits ? Breach::none : Breach::loading, -1, -1, share, problem_.options.loading};
}

Verdict Trial::inspect(const Proposal& proposal) const {
    const Model& model = transformer_.models[at(proposal.model)];
    if (const Verdict lamp = worst_lamp(); !lamp.feasible) return lamp;
    if (const Verdict cable = worst_cable(proposal); !cable.feasible) return cable;
    if (const Verdict run = worst_run(model); !run.feasible) return run;
    return loading(model);
}

bool Trial::carries(const Proposal& proposal) const {
    const Model& model = transformer_.models[at(proposal.model)];
    return worst_cable(proposal).feasible && worst_run(model).feasible && loading(model).feasible;
}

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
