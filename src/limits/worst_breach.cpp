#include "rillwatt/limits/breach.hpp"

namespace rillwatt {

namespace {

/// Keeps the breach that is farthest beyond its limit.
class Worst {
  public:
    explicit Worst(BreachKind kind) { found_.kind = kind; }

    void hold(const Standing& standing, int run, int node, int link = -1) {
        if (standing.beyond() <= most_) return;
        most_ = standing.beyond();
        found_.run = run;
        found_.node = node;
        found_.link = link;
        found_.value = standing.value;
        found_.limit = standing.limit;
    }

    double beyond() const { return most_; }
    std::optional<Breach> found() const { return most_ > limit_slack ? std::optional(found_) : std::nullopt; }

  private:
    Breach found_;
    double most_ = limit_slack;
};

std::optional<Breach> worst_lamp(const TransformerCircuit& circuit, const NetworkSolution& solution,
                                 const Margins& margins) {
    Worst low(BreachKind::lamp_low);
    Worst high(BreachKind::lamp_high);
    for (std::size_t i = 0; i < circuit.nodes.size(); ++i) {
        const CircuitNode& node = circuit.nodes[i];
        if (node.fixture == nullptr) continue;
        const Volts volts(solution.lamp_volts[i]);
        low.hold(against_low_end(*node.fixture, volts, margins), node.run, static_cast<int>(i));
        high.hold(against_high_end(*node.fixture, volts, margins), node.run, static_cast<int>(i));
    }
    return high.beyond() > low.beyond() ? high.found() : low.found();
}

std::optional<Breach> worst_cable(const TransformerCircuit& circuit, const NetworkSolution& solution) {
    Worst worst(BreachKind::cable);
    for (std::size_t i = 0; i < circuit.nodes.size(); ++i) {
        const CircuitNode& node = circuit.nodes[i];
        if (node.parent < 0) continue;
        worst.hold(against_ampacity(*node.cable, Amperes(solution.branch_amps[i])), node.run,
                   static_cast<int>(i));
    }
    for (std::size_t k = 0; k < circuit.links.size(); ++k) {
        const CircuitLink& link = circuit.links[k];
        worst.hold(against_ampacity(*link.cable, Amperes(solution.link_amps[k])),
                   circuit.nodes[static_cast<std::size_t>(link.a)].run, link.b, static_cast<int>(k));
    }
    return worst.found();
}

std::optional<Breach> worst_run(const TransformerCircuit& circuit, const NetworkSolution& solution) {
    Worst worst(BreachKind::secondary);
    for (std::size_t r = 0; r < circuit.runs.size(); ++r)
        worst.hold(against_output(*circuit.type, Amperes(solution.run_amps[r])), static_cast<int>(r), -1);
    return worst.found();
}

std::optional<Breach> overloading(const TransformerCircuit& circuit, const NetworkSolution& solution,
                                  const Margins& margins) {
    double load = 0;
    for (std::size_t r = 0; r < circuit.runs.size(); ++r)
        load += solution.run_volts[r] * solution.run_amps[r];
    Worst worst(BreachKind::loading);
    worst.hold(against_loading(load / circuit.type->va.value(), margins), -1, -1);
    return worst.found();
}

/// What breaks of all that carries the load.
std::optional<Breach> overload(const TransformerCircuit& circuit, const NetworkSolution& solution,
                               const Margins& margins) {
    if (const auto cable = worst_cable(circuit, solution)) return cable;
    if (const auto run = worst_run(circuit, solution)) return run;
    return overloading(circuit, solution, margins);
}

} // namespace

std::optional<Breach> worst_breach(const TransformerCircuit& circuit, const NetworkSolution& solution,
                                   const Margins& margins) {
    if (const auto lamp = worst_lamp(circuit, solution, margins)) return lamp;
    return overload(circuit, solution, margins);
}

bool carries_load(const TransformerCircuit& circuit, const NetworkSolution& solution,
                  const Margins& margins) {
    return !overload(circuit, solution, margins);
}

} // namespace rillwatt
