#pragma once

#include "rillwatt/search/effort.hpp"
#include "rillwatt/search/trial.hpp"

#include "gather_problem.hpp"

namespace rillwatt::sizing {

/// Taps cost nothing, so several may do. Of those that keep every limit, takes the ones that leave the lamps
/// the most room: for each run the least distance of a lamp from its window's low end on a weak supply and
/// from its high end on a strong one counts, and the sum over the runs is made as large as it can be within
/// the effort.
void choose_roomiest_taps(const SizeProblem& problem, const TransformerProblem& transformer,
                          const SiteSettings& settings, Trial& trial, Proposal& proposal, Effort& effort);

} // namespace rillwatt::sizing
