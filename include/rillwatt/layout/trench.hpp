#pragma once

#include "rillwatt/layout/site_lengths.hpp"
#include "rillwatt/quantity/point.hpp"
#include "rillwatt/site/site.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// What the crew does along a stretch of trench.
enum class TrenchGround {
    soil,   ///< dig
    sleeve, ///< pull through a pipe that is there already
    water,  ///< lay on the bottom
    paving, ///< saw cut or new sleeve, through paving or a building
};

/// A straight stretch of trench and all the cables that lie in it.
struct TrenchStretch {
    PlanPoint a;
    PlanPoint b;
    std::vector<std::string> cables; ///< ids of the parts and links they lead to, in file order
    TrenchGround ground = TrenchGround::soil;
    std::string area; ///< id of the area or sleeve it lies in; empty in soil

    Metres length() const { return distance(a, b); }
};

/// The routes of all cables laid into one another: stretches where several coincide are there once.
std::vector<TrenchStretch> trench_stretches(const Site& site, const SiteLengths& lengths);

/// Length of all stretches on a kind of ground together.
Metres trench_length(const std::vector<TrenchStretch>& stretches, TrenchGround ground);

/// Plan length of all routes laid into one another, whatever the ground. Cables of typed length have no
/// route and are not in it.
Metres trench_length(const SiteLengths& lengths);

} // namespace rillwatt
