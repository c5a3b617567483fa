#include "walk_need.hpp"

#include "rillwatt/limits/light_limits.hpp"

#include <algorithm>

namespace rillwatt {

double WalkNeed::dark(double mean_lux) const {
    return margin * std::max(least, limits::walk_uniformity.value * mean_lux);
}

bool WalkNeed::met_by(const LuxSpread& spread) const {
    return spread.mean >= margin * mean && spread.least >= dark(spread.mean);
}

WalkNeed need_of(const WalkTarget& target) {
    return {target.mean.value_or(Lux(0)).value(), target.minimum.value_or(Lux(0)).value()};
}

} // namespace rillwatt
