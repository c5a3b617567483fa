#pragma once

#include "rillwatt/search/problem.hpp"

namespace rillwatt::sizing {

// The search speaks in numbers; what gathers for it and explains it uses its words.
using namespace search;

/// Gathers what is open on a site. The circuits must outlive the problem.
SizeProblem gather(const Site& site, const Catalog& catalog, const SiteCircuits& circuits,
                   const SizeOptions& options);

} // namespace rillwatt::sizing
