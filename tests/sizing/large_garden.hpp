#pragma once

#include "support/garden.hpp"

namespace rillwatt::test {

/// A garden of many lamps, everything open, the same for the same seed: each transformer with two to five
/// runs, each run a trunk with spurs and hubs. One transformer for thousands of lamps gets as many runs as it
/// needs.
Garden large_garden(int lamps, int transformers, unsigned seed);

/// A garden of long chains, the hardest to size with a cable for each length: `runs` of `lamps` lamps one
/// after the other on each transformer, 9 to 21 feet apart, one kind of lamp, everything open. Its dearer
/// transformers have taps above what a lamp may get.
Garden chained_garden(int transformers, int runs, int lamps);

} // namespace rillwatt::test
