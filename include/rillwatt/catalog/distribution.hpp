#pragma once

#include "rillwatt/quantity/quantity.hpp"

#include <string>
#include <variant>

namespace rillwatt {

/// Cosine-power beam; half of the centre intensity at half of `beam_angle` off the axis.
struct BeamDistribution {
    Degrees beam_angle;
};

/// The same intensity at every angle from straight down between `shadow` and `cutoff`, none outside.
struct HatDistribution {
    Degrees shadow{10};
    Degrees cutoff{75};
};

/// `I0 / cos^3` up to `cutoff`: an even pool on level ground.
struct BatwingDistribution {
    Degrees cutoff;
};

/// A photometric file, ANSI/IES LM-63 or EULUMDAT, named relative to the file that mentions it.
struct FileDistribution {
    std::string path; ///< as the loader resolved it: what to hand to the file reader
};

/// How a catalog says a light spreads its lumens. `std::monostate`: it says nothing, no light is computed.
using DistributionSpec =
    std::variant<std::monostate, BeamDistribution, HatDistribution, BatwingDistribution, FileDistribution>;

} // namespace rillwatt
