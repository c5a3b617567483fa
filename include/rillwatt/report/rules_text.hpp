#pragma once

#include "rillwatt/check/rule.hpp"
#include "rillwatt/report/text_style.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// Rules for people: id, severity, what it looks for, why and how to mend it, where the limit is written.
std::string rules_text(const std::vector<Rule>& rules, const TextStyle& style);

/// The same for programs.
std::string rules_json(const std::vector<Rule>& rules);

} // namespace rillwatt
