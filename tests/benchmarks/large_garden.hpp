#pragma once

#include "support/garden.hpp"

namespace rillwatt::test {

/// A garden of many lamps, everything open, the same for the same seed: each transformer with two to five
/// runs, each run a trunk with spurs and hubs. One transformer for thousands of lamps gets as many runs as it
/// needs.
Garden large_garden(int lamps, int transformers, unsigned seed);

} // namespace rillwatt::test
