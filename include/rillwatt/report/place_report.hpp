#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/placing/propose_lights.hpp"
#include "rillwatt/report/text_style.hpp"

#include <string>

namespace rillwatt {

/// A proposal with the light it gives: `with_lights` is the site with the proposed lights in place and must
/// have light.
struct PlaceReport {
    const PlacingProposal& proposal;
    const std::string& toml;
    const Assessment& with_lights;
};

/// The place object, for programs.
std::string place_json(const PlaceReport& report);

/// The proposal for people: what each walk and falls gets and why, the TOML to paste, the light it gives.
std::string place_text(const PlaceReport& report, const TextStyle& style);

} // namespace rillwatt
