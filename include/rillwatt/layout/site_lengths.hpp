#pragma once

#include "rillwatt/quantity/point.hpp"
#include "rillwatt/site/site.hpp"

#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

/// A gap between two areas that is no wider than this counts as closed: it is the rounding of a tape reading,
/// and no spade goes through it. Common practice, no source.
inline constexpr Metres widest_closed_gap{0.003};

/// Where a cable length comes from.
enum class LengthOrigin {
    typed, ///< written in the site file, used as it stands
    plan,  ///< shortest trench on the plan times the cable allowance
    open,  ///< neither written nor to be had from the plan
};

/// The cable between one part and what feeds it.
struct PartLength {
    LengthOrigin origin = LengthOrigin::open;
    std::optional<Metres> length;   ///< cable length, allowance included where it comes from the plan
    std::vector<PlanPoint> route;   ///< trench from the feed point to the part; empty unless from the plan
    std::optional<Metres> straight; ///< straight line between the ends where both are on the plan
    std::vector<std::string>
        crossed;             ///< paving or building areas that an end lies inside of and the route passes
    std::string blocked_by;  ///< area that leaves no way through; empty when there is one
    std::string sleeve_hint; ///< where a sleeve would help most, in words; empty when there is a way
};

/// One length for each splice, fixture and link of a site, in the order of the site's lists.
struct SiteLengths {
    std::vector<PartLength> splices;
    std::vector<PartLength> fixtures;
    std::vector<PartLength> links;
};

/// Takes typed lengths as they are and measures the rest on the plan as the shortest trench among the
/// obstacles.
SiteLengths measure_lengths(const Site& site);

} // namespace rillwatt
