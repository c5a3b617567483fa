#pragma once

#include "support/garden.hpp"
#include <random>

namespace rillwatt::test {

/// How a random garden comes out.
struct RandomGardenSpec {
    int runs = 2;
    int lamps = 20;
    int links = 0;
    bool mixed_loads = true; ///< all four load models, otherwise constant power only
    double regulation = 0.05;
    double load_share = 0.6; ///< of the transformer's rating, roughly
};

/// A tree of splices and lamps, drawn from a seed: the same seed gives the same garden everywhere.
Garden random_garden(unsigned seed, const RandomGardenSpec& spec);

/// A number from `low` to `high`.
double random_between(std::mt19937& source, double low, double high);

} // namespace rillwatt::test
