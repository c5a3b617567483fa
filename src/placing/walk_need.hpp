#pragma once

#include "rillwatt/light/illuminance.hpp"
#include "rillwatt/light/walk_light.hpp"

namespace rillwatt {

/// Lux that the light on a walk has to reach; 0 where nothing is asked.
struct WalkNeed {
    double mean = 0;
    double least = 0;
    double margin = 1; ///< so many times all of it is asked

    /// What the darkest spot needs when the walk has that mean: its own minimum or the least uniformity.
    double dark(double mean_lux) const;

    bool met_by(const LuxSpread& spread) const;
};

WalkNeed need_of(const WalkTarget& target);

} // namespace rillwatt
