#pragma once

#include "rillwatt/document/value_reader.hpp"

#include <vector>

namespace rillwatt {

/// Refuses a line that stands still: the same point twice in a row.
void check_line(ValueReader& reader, int line, const std::vector<PlanPoint>& points);

/// Drops a closing point that repeats the first, and refuses an outline without an inside or one that crosses
/// itself.
void check_outline(ValueReader& reader, int line, std::vector<PlanPoint>& outline);

/// A bearing brought to 0 up to, not including, 360 degrees.
Degrees full_circle(Degrees bearing);

/// Which way falls face: `left` and `right` are the ends of the lip for someone who stands in front of them
/// and looks at them.
///
///     the falls     left ----------- right
///     faces                   |
///                             v
///     someone                 o   looks up the page
Degrees facing_of_lip(PlanPoint left, PlanPoint right);

/// Refuses a typed bearing more than 45 degrees off the one the lip implies.
void check_facing(ValueReader& reader, int line, Degrees typed, Degrees of_lip);

} // namespace rillwatt
