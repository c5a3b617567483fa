#pragma once

#include "rillwatt/sizing/size.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <memory>
#include <optional>

namespace rillwatt {

/// By how many volts the worst lamp misses the low end of its window on a weak supply; empty when none does.
/// Of lamps whose circuit has no operating point there nothing is known.
std::optional<Volts> weak_shortfall(const SiteSolution& solution, const Site& site, const Catalog& catalog);

/// Chooses as `size_site` does, so that no lamp leaves its window on a weak supply either, nor, if anything
/// can do that, on a strong one without load. All three cases are constraints of one search: its cost and
/// bound are those of choices that hold in each.
LoadResult<SizeResult> size_for_weak_supply(const std::shared_ptr<const Site>& site,
                                            const std::shared_ptr<const Catalog>& catalog,
                                            SizeOptions options);

} // namespace rillwatt
