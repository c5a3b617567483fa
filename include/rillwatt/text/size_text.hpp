#pragma once

#include "rillwatt/plan/size_report.hpp"
#include "rillwatt/sizing/headroom.hpp"
#include "rillwatt/text/text_style.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// What was chosen and why, the bill, before and after, for people.
std::string size_text(const SizeReport& report, const TextStyle& style);

/// What every place can still carry, for people.
std::string headroom_text(const std::vector<Headroom>& rooms, const Assessment& assessment,
                          const SizeOptions& options, const TextStyle& style);

} // namespace rillwatt
