#pragma once

#include "rillwatt/mains/circuit_proposal.hpp"
#include "rillwatt/site/site.hpp"

#include <string>

namespace rillwatt {

/// The proposal for the line-voltage side, circuit by circuit, for programs.
std::string circuits_json(const Site& site, const CircuitProposal& proposal);

} // namespace rillwatt
