#pragma once

#include "rillwatt/check/assessment.hpp"

#include <string>

namespace rillwatt {

/// The low-voltage circuits as a single-line diagram, one `<svg>` element: each transformer with its taps,
/// its runs, splices and lights as a tree from left to right, every cable with its length, type and amperes,
/// every node with its volts in the nominal case where it was solved. Elements of a part carry `data-part`.
std::string diagram_svg(const Assessment& assessment);

} // namespace rillwatt
