#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/layout/site_lengths.hpp"
#include "rillwatt/site/site.hpp"

#include <string>
#include <vector>

namespace rillwatt::test {

/// What a garden is computed under.
struct SpiceCase {
    double supply_factor = 1; ///< of the supply volts as given
    double conductor_celsius = 20;
};

/// A garden written for ngspice from what its site and its catalog say, and nothing that the program makes of
/// them: the way from part to part is followed here, ohms come from the figures of the conductor tables, and
/// the transformer is the one of the method, controlled sources behind one impedance. A lamp is a behavioural
/// current source; a constant-power one's current is limited below 0.4 of its rated volts, far from the upper
/// root, so that ngspice finds it from zero volts.
std::string spice_deck(const Site& site, const Catalog& catalog, const SiteLengths& lengths,
                       const SpiceCase& under);

/// Volts as ngspice has them, each in the order of the site.
struct SpiceVolts {
    std::vector<double> runs;   ///< at the transformer
    std::vector<double> joints; ///< of the fixtures, where the lead meets the cable
    std::vector<double> lamps;
};

/// Throws with the output of ngspice when that finds no answer.
SpiceVolts ngspice_volts(const Site& site, const Catalog& catalog, const SiteLengths& lengths,
                         const SpiceCase& under);

} // namespace rillwatt::test
