#pragma once

#include "rillwatt/solver/site_solution.hpp"

namespace rillwatt {

/// Puts what a case found beside the nodes of the circuits, once its lists are in file order.
void put_beside_nodes(const Site& site, const SiteCircuits& circuits, CaseResult& result);

} // namespace rillwatt
