#pragma once

#include "rillwatt/plan/place_report.hpp"

#include <string>

namespace rillwatt {

/// The place object of the results contract.
std::string place_json(const PlaceReport& report);

} // namespace rillwatt
