#pragma once

#include "rillwatt/search/trial.hpp"
#include "rillwatt/sizing/size.hpp"

#include "gather_problem.hpp"

namespace rillwatt::sizing {

/// The site as sizing sees it with everything reopened: no cable, tap or model is named.
Site reopened(const Site& site);

/// Puts proposals into a site and lists what differs from how it was.
std::vector<SizeChoice> put_in_place(const SizeProblem& problem,
                                     const std::vector<std::optional<Proposal>>& proposals, Site& site);

} // namespace rillwatt::sizing
