#pragma once

#include "rillwatt/solver/network.hpp"
#include "rillwatt/solver/site_solution.hpp"

namespace rillwatt {

/// Adds all that is to be said of one transformer's solved circuit to a case, and the volts of its nodes to
/// `beside`.
void add_circuit_result(const Site& site, const TransformerCircuit& circuit, const Network& network,
                        const NetworkSolution& solution, CaseResult& result, CircuitResult& beside);

/// The same of a circuit without any load current: each lamp and node at its run's open-circuit volts.
void add_open_circuit_result(const TransformerCircuit& circuit, const Network& network, CaseResult& result,
                             CircuitResult& beside);

/// Where a circuit without an operating point gives way, and how much of its load it carries.
NoOperatingPoint no_operating_point(const TransformerCircuit& circuit, const Network& network);

} // namespace rillwatt
