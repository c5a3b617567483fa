#pragma once

#include "rillwatt/quantity/quantity.hpp"

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

} // namespace rillwatt
