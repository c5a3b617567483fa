#pragma once

#include "rillwatt/engine/arguments.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/quantity/point.hpp"
#include "rillwatt/site/site.hpp"

#include <vector>

namespace rillwatt {

/// The points that `--point X,Y,Z` asks for, bare numbers in the given unit. Whatever is no point is an
/// error.
LoadResult<std::vector<SpacePoint>> points_of(const Arguments& arguments, LengthUnit unit);

} // namespace rillwatt
