#pragma once

#include "rillwatt/plan/electrician_sheet.hpp"

#include <string>

namespace rillwatt {

/// The sheet as one self-contained page without script: one or two printed pages, letter or A4.
std::string electrician_html(const ElectricianSheet& sheet);

/// The sheet as plain text for a message: short lines, one circuit after the other.
std::string electrician_text(const ElectricianSheet& sheet);

} // namespace rillwatt
