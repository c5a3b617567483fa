#pragma once

#include "rillwatt/mains/circuit_proposal.hpp"
#include "rillwatt/site/site.hpp"
#include "rillwatt/text/text_style.hpp"

#include <string>

namespace rillwatt {

/// The proposal for the line-voltage side for people: circuit by circuit what is written, what is chosen and
/// why, how deep, what to paste, cautions.
std::string circuits_text(const Site& site, const CircuitProposal& proposal, const TextStyle& style);

} // namespace rillwatt
