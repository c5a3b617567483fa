#pragma once

#include "rillwatt/sizing/size.hpp"

#include "problem.hpp"
#include "trial.hpp"

namespace rillwatt::sizing {

/// The site as sizing sees it with everything reopened: no cable, tap or model is named.
Site reopened(const Site& site);

/// Puts proposals into a site and lists what differs from how it was.
std::vector<SizeChoice> put_in_place(const SizeProblem& problem,
                                     const std::vector<std::optional<Proposal>>& proposals, Site& site);

} // namespace rillwatt::sizing
