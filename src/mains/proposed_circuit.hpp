#pragma once

#include "rillwatt/mains/circuit_proposal.hpp"

namespace rillwatt {

/// Fills what a circuit leaves open for its loads.
ProposedCircuit fill_circuit(const Site& site, const BranchCircuit& written, std::vector<MainsLoad> loads);

/// New circuits for loads that name none.
std::vector<ProposedCircuit> new_circuits(const Site& site, const std::vector<MainsLoad>& unassigned);

} // namespace rillwatt
