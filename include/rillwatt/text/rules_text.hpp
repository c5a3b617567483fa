#pragma once

#include "rillwatt/check/rule.hpp"
#include "rillwatt/text/text_style.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// Rules for people: id, severity, what it looks for, why and how to fix it, where the limit is written.
std::string rules_text(const std::vector<Rule>& rules, const TextStyle& style);

/// The part of the work a group of rules belongs to, in words.
const char* group_name(RuleGroup group);

} // namespace rillwatt
