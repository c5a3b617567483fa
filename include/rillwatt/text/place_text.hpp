#pragma once

#include "rillwatt/plan/place_report.hpp"
#include "rillwatt/text/text_style.hpp"

#include <string>

namespace rillwatt {

/// The proposal for people: what each walk and falls gets and why, the TOML to paste, the light it gives.
std::string place_text(const PlaceReport& report, const TextStyle& style);

} // namespace rillwatt
