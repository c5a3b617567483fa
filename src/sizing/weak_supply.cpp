#include "rillwatt/sizing/weak_supply.hpp"

#include "rillwatt/limits/standing.hpp"

#include <algorithm>

namespace rillwatt {

std::optional<Volts> weak_shortfall(const SiteSolution& solution, const Site& site, const Catalog& catalog) {
    std::optional<Volts> most;
    for (const LampResult& lamp : solution.weak().lamps) {
        const FixtureType* type = find_entry(catalog.fixtures, site.fixtures[lamp.fixture].model);
        if (type == nullptr) continue;
        const Standing standing = against_low_end(*type, lamp.volts);
        if (standing.broken()) most = std::max(most.value_or(Volts(0)), Volts(standing.beyond()));
    }
    return most;
}

LoadResult<SizeResult> size_for_weak_supply(const std::shared_ptr<const Site>& site,
                                            const std::shared_ptr<const Catalog>& catalog,
                                            SizeOptions options) {
    options.weak_supply = true;
    options.strong_supply = true;
    return size_site(site, catalog, options);
}

} // namespace rillwatt
