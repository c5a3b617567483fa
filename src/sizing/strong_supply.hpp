#pragma once

#include "rillwatt/search/site_search.hpp"
#include "rillwatt/sizing/size.hpp"

#include "gather_problem.hpp"

/// Taps that suit a strong supply as well. Without load a lamp gets all that its tap gives, so this asks for
/// no search of its own: it says which taps may be chosen.
namespace rillwatt::sizing {

/// Sets `most_unloaded` of every run whose tap is open.
void limit_to_strong_supply(const Site& site, SizeProblem& problem);

/// Where a transformer found no answer, lifts that limit from the fewest of its runs that let it have one,
/// looking at each run in turn; from all of them where even that does not help. Returns the ids of these
/// runs.
std::vector<std::string> lift_strong_limits(const Site& site, const SiteAnswer& answer, SizeProblem& problem,
                                            Effort& effort);

/// One clause on the tap chosen for a run where it gives more on a strong supply than a lamp or the contact
/// limit allows; empty where it does not, or where the tap is typed.
std::string strong_tap_words(const Site& site, const SizeProblem& problem,
                             const TransformerProblem& transformer, const Proposal& proposal,
                             std::size_t run);

} // namespace rillwatt::sizing
