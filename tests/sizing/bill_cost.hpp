#pragma once

#include "rillwatt/sizing/size.hpp"

#include "support/garden.hpp"

namespace rillwatt::test {

/// What the bill of a sized garden takes for cable and transformers.
double billed(const Garden& garden, const Site& sized);

/// Whether no chosen length of a sized garden is thicker than the chosen one that feeds it.
bool never_thicker_downstream(const Garden& garden, const Site& sized);

} // namespace rillwatt::test
