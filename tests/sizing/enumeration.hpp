#pragma once

#include "rillwatt/sizing/size.hpp"

#include "support/garden.hpp"
#include <optional>

namespace rillwatt::test {

/// The least cost of a garden found by trying everything: every model, every tap, every cable, each complete
/// choice solved; on a weak and a strong supply too where the options ask for the weak one. Nothing of the
/// search is used. Empty when nothing works.
std::optional<double> cheapest_by_enumeration(const Garden& garden, const SizeOptions& options);

} // namespace rillwatt::test
