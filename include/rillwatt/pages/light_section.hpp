#pragma once

#include "rillwatt/check/assessment.hpp"

#include <string>

namespace rillwatt {

/// The section on light of the report page: the isolux picture, every walk, falls and viewpoint with its
/// figures, and what they mean. A whole `<section>`; empty when no light was computed.
std::string light_section(const Assessment& assessment);

} // namespace rillwatt
