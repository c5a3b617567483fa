#pragma once

#include "shortest_trench.hpp"
#include <string>

namespace rillwatt {

/// Why there is no trench between two places, and what would make one.
struct NoWay {
    std::string blocked_by;  ///< id of the area in the way
    std::string sleeve_hint; ///< the shortest sleeve that would open a way, in words
};

NoWay explain_no_way(const Site& site, TrenchFinder& finder, PlanPoint from, PlanPoint to);

} // namespace rillwatt
