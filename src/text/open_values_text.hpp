#pragma once

#include "rillwatt/finding/finding.hpp"
#include "rillwatt/text/text_style.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace rillwatt {

/// Whether a finding is of a value that sizing fills.
bool left_to_sizing(const Finding& finding);

std::size_t count_left_to_sizing(const std::vector<Finding>& findings);

/// All values that sizing fills as one finding: how many, the command that chooses them, and where they are.
std::string left_to_sizing_text(const std::vector<Finding>& findings, const TextStyle& style);

} // namespace rillwatt
