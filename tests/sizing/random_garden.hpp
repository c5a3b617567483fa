#pragma once

#include "support/garden.hpp"
#include <random>

namespace rillwatt::test {

/// What a random garden to be sized is like.
struct GardenShape {
    int transformers = 1;
    int most_runs = 2;
    int most_lengths = 3; ///< cable lengths of a run
    int cables = 3;
    int models = 2;
    bool spools = false;
    bool mixed_loads = false;
    bool steady_loads = false;   ///< constant current only
    bool rising_loads = false;   ///< filaments and resistances only
    bool narrow_windows = false; ///< upper ends that a high tap can break
    bool low_windows = false;    ///< lower ends that reach below half of the tap
    bool typed_some = false;
    bool rising_prices = true; ///< thicker is dearer
    bool warm = false;         ///< conductors warm up by half a hundred degrees on a weak supply
    bool ring = false;         ///< a link from the first run to the last one, or round the only one
};

/// A garden with most of it left open, the same for the same seed.
Garden random_garden(const GardenShape& shape, unsigned seed);

/// Volt-amperes over the rating of a transformer with some model, some taps and some cable on each run, the
/// same for the same seed; 0 where that has no operating point. Of a garden with one transformer and without
/// links.
double loading_of_some_choice(const Garden& garden, unsigned seed);

} // namespace rillwatt::test
