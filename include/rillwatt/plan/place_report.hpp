#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/placing/propose_lights.hpp"

#include <string>

namespace rillwatt {

/// A proposal with the light it gives: `with_lights` is the site with the proposed lights in place and must
/// have light.
struct PlaceReport {
    const PlacingProposal& proposal;
    const std::string& toml;
    const Assessment& with_lights;
};

} // namespace rillwatt
