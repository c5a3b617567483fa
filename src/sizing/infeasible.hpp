#pragma once

#include "rillwatt/search/effort.hpp"
#include "rillwatt/sizing/size.hpp"

#include "gather_problem.hpp"

namespace rillwatt::sizing {

/// Says why one transformer cannot be served and what would fix it. Every figure comes from solving the
/// circuit: first with all that is open at its best, then with each change tried.
Infeasibility explain_infeasible(const Site& site, const Catalog& catalog, const SiteLengths& lengths,
                                 const SizeProblem& problem, std::size_t transformer, Effort& effort);

} // namespace rillwatt::sizing
