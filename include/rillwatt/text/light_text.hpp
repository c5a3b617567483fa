#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/text/text_style.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// Light on walks and falls, at the points asked for and from every viewpoint, with verdicts in words. The
/// assessment must have light.
std::string light_text(const Assessment& assessment, const TextStyle& style);

/// Findings of rules about light, in the order they were.
std::vector<Finding> light_findings(const std::vector<Finding>& findings);

/// What a walk asks for: "P4: 5.0 lx, darkest 1.0 lx"; "-" when it asks nothing.
std::string walk_target_text(const Walk& walk, const WalkLight& light);

/// "enough", "too dark", "patchy", "dark".
std::string walk_verdict(const WalkLight& light);

/// "lit", "too dim", "dark".
std::string falls_verdict(const FallsLight& light);

/// What the figures mean and what they leave out, one sentence each.
std::vector<std::string> light_method(const Site& site, const LightResult& light);

} // namespace rillwatt
