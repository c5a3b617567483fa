#pragma once

#include "trial.hpp"

namespace rillwatt::sizing {

/// Taps cost nothing, so several may do. Of those that keep every limit, takes the ones that leave the lamps
/// the most room: the least distance of any lamp from its window's low end on a weak supply and from its high
/// end on a strong one is made as large as it can be, run by run.
void choose_roomiest_taps(const SizeProblem& problem, const TransformerProblem& transformer,
                          const SiteSettings& settings, Trial& trial, Proposal& proposal);

} // namespace rillwatt::sizing
