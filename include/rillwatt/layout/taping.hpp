#pragma once

#include "rillwatt/quantity/point.hpp"
#include "rillwatt/site/site.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// Where a part stands, as two tape measures say it.
struct TapedPart {
    std::string id;
    Metres from_first;  ///< distance from the first mark
    Metres from_second; ///< distance from the second mark
    bool left = true;   ///< side for someone walking from the first mark to the second; on the line: left
};

/// Taped distances of every part and plan shape end that has a place, in file order: for staking out, and for
/// finding it again in five years.
std::vector<TapedPart> taped_distances(const Site& site, const Mark& first, const Mark& second);

} // namespace rillwatt
