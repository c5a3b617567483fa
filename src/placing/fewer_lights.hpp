#pragma once

#include "light_sum.hpp"

namespace rillwatt {

/// How much a search may still look at, in points of a walk.
struct Effort {
    long points = 0;

    bool spent() const { return points <= 0; }
};

/// Moves single lights, each to where most is gained, until the walk has what it needs or no move helps.
/// Returns whether it has.
bool move_until_met(LightSum& sum, Effort& effort);

/// Takes lights away one after the other, moving those that stay, as long as the walk has what it needs.
void take_away(LightSum& sum, Effort& effort);

/// Adds lights where it is darkest until the walk has what it needs, at most up to `most`. Returns whether it
/// has.
bool fill_dark_spots(LightSum& sum, std::size_t most, Effort& effort);

} // namespace rillwatt
