#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/text/text_style.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// The whole check of a site for people: circuit, lamps, loads, line-voltage circuits, findings worst first,
/// cautions. Lengths in the site's units, at most `style.width` columns, names made printable.
std::string check_text(const Assessment& assessment, const TextStyle& style);

/// Findings as text: `FILE:LINE: severity: message [rule-id]`, then how to fix it and where the limit comes
/// from.
std::string findings_text(const std::vector<Finding>& findings, const TextStyle& style);

/// "2 errors, 1 warning, 3 notes", or "no findings".
std::string findings_count_text(const std::vector<Finding>& findings);

} // namespace rillwatt
