#pragma once

#include "rillwatt/circuit/circuit.hpp"

namespace rillwatt {

/// Everything the user left out of the circuits, in file order.
std::vector<OpenValue> open_values(const Site& site, const std::vector<TransformerCircuit>& circuits);

} // namespace rillwatt
