#pragma once

#include "rillwatt/check/rule.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// Every rule with its severity, explanation and source, for programs.
std::string rules_json(const std::vector<Rule>& rules);

} // namespace rillwatt
