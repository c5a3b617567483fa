#pragma once

#include "rillwatt/sizing/size.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <memory>
#include <optional>

namespace rillwatt {

/// A sizing whose lamps are to keep their windows on a weak supply too.
struct WeakSupplySizing {
    SizeResult result;
    Volts margin; ///< above the low end of every window at nominal supply, that it took
};

/// The margin above the low end of its window at nominal supply, in tenths of a volt, that each lamp which
/// leaves its window only when the supply is weak would have needed: what such a lamp loses from nominal to
/// weak. Empty when no lamp does, or where a circuit has no operating point on a weak supply, so that nothing
/// is known of its lamps.
std::optional<Volts> margin_missed(const SiteSolution& solution, const Site& site, const Catalog& catalog);

/// Chooses as `size_site` does, with the margin at the low end raised step by step, from what the options
/// ask, by tenths of a volt, until no lamp leaves its window on a weak supply. The margin is the same for
/// all lamps: the choice is the cheapest that keeps it, not always the cheapest of all that do. Infeasible
/// when no margin that still works is wide enough; then the result is that of the margin which failed.
LoadResult<WeakSupplySizing> size_for_weak_supply(const std::shared_ptr<const Site>& site,
                                                  const std::shared_ptr<const Catalog>& catalog,
                                                  const SizeOptions& options);

} // namespace rillwatt
