#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/quantity/quantity.hpp"
#include "rillwatt/site/site.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// One branch circuit with all that hangs on it.
struct MainsCircuit {
    std::size_t circuit = 0; ///< index into Site::circuits
    Amperes amps;
    Amperes continuous_amps;
    Amperes design_amps;
    double drop_ratio = 0; ///< over the circuit's volts; meaningless unless drop_known
    bool drop_known = false;
    std::vector<std::string> loads; ///< ids of pumps and transformers
};

/// The line-voltage side of a site.
struct MainsSummary {
    std::vector<MainsCircuit> circuits; ///< in the order of Site::circuits
};

/// What hangs on each branch circuit, and what it draws with the low-voltage side as solved.
MainsSummary summarise_mains(const Site& site, const Catalog& catalog, const SiteCircuits& circuits,
                             const SiteSolution& solution);

} // namespace rillwatt
