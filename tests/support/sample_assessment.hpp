#pragma once

#include "rillwatt/check/assessment.hpp"

namespace rillwatt::samples {

/// A small garden with numbers filled in by hand, for writers: they compute nothing, so neither does this.
///
///     C2 - T1 (mag-150, 150 VA)
///           |- A (13 V, 12/2) -- H1 -+- falls-1 (typed length, lead)
///           |                        +- falls-2 (length from the plan)
///           '- B (12 V) -- path-1 -- path-2
///     C1 - P1
Assessment small_garden();

/// The same garden with names that try to be markup, a formula, a terminal command and a mirror.
Assessment hostile_garden();

/// The same garden with a second transformer whose run asks for more than its cable carries.
Assessment unsolved_garden();

} // namespace rillwatt::samples
