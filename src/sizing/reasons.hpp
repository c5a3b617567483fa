#pragma once

#include "rillwatt/search/effort.hpp"
#include "rillwatt/search/trial.hpp"
#include "rillwatt/sizing/size.hpp"

#include "gather_problem.hpp"

namespace rillwatt::sizing {

/// For each run and transformer of which something was chosen: the limit that binds, and what the next
/// cheaper choice would have broken. Each is solved.
std::vector<SizeReason> give_reasons(const Site& site, const SizeProblem& problem,
                                     const TransformerProblem& transformer, const Proposal& proposal,
                                     Effort& effort);

} // namespace rillwatt::sizing
