#pragma once

#include "fewer_lights.hpp"

namespace rillwatt {

/// What an exhaustive search says.
enum class Exhaustive { found, impossible, given_up };

/// Whether exactly `count` lights of a table can meet the need: tries them all, as a branch and bound. The
/// darkest unmet point with the fewest places that reach it has to be lit by one of those; a branch ends
/// where what is still needed is more than the lights left could give at most. `lamps` gets the answer.
Exhaustive search_all(const LightTable& table, const WalkNeed& need, const std::vector<double>& base,
                      std::size_t count, Effort& effort, std::vector<std::size_t>& lamps);

} // namespace rillwatt
