#pragma once

#include "fewer_lights.hpp"

namespace rillwatt {

/// How many lights of a table it takes at least for the mean: the light that is missing over the most that
/// one lamp puts on the walk. 1 at least; more than there are places when no number does.
std::size_t lights_for_mean(const LightTable& table, const WalkNeed& need, const std::vector<double>& base);

/// How many lights of a table it takes at least, by weighing points: with any weights, the light that is
/// needed over the most of it that one lamp gives bounds the number from below; of a lamp only that counts
/// which a point still needs. The weights are sought by the multiplicative-weights method for fractional
/// covering (Plotkin, Shmoys, Tardos 1995; Young 1995). A number of lights also makes a mean, and the mean
/// asks for its share at the darkest spot: a bound that was found may so lead to a higher one. At most
/// `most`.
std::size_t fewest_possible(const LightTable& table, const WalkNeed& need, const std::vector<double>& base,
                            std::size_t most, Effort& effort);

/// The least and the greatest that one lamp adds to the sum of lux over the walk.
struct SumRange {
    double least = 0;
    double greatest = 0;
};

SumRange sum_range(const LightTable& table);

/// What the darkest spot needs, at least, when `more` lamps are added to a walk with that sum of lux.
double dark_with(const LightTable& table, const WalkNeed& need, double total, double more);

} // namespace rillwatt
