#pragma once

#include "rillwatt/check/assessment.hpp"

#include <string>

namespace rillwatt {

/// The proposal for the line-voltage side, circuit by circuit, for programs.
std::string circuits_json(const Assessment& assessment);

} // namespace rillwatt
