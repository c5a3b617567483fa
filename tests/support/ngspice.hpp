#pragma once

#include "rillwatt/solver/network.hpp"

#include <string>
#include <vector>

namespace rillwatt::test {

/// A network written for ngspice: the transformer as controlled sources behind one impedance, every lamp as a
/// behavioural current source. A constant-power lamp's current is limited below `0.4` of its rated volts, far
/// from the upper root, so that ngspice finds it from zero volts.
std::string spice_deck(const Network& network);

/// Volts at every lamp (or node without lamp) as ngspice has them; throws with its output when it fails.
std::vector<double> ngspice_lamp_volts(const Network& network);

} // namespace rillwatt::test
