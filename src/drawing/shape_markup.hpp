#pragma once

#include "shapes.hpp"
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// A symbol at the origin.
std::string symbol_markup(const Symbol& symbol);

/// `drawing` names the drawing ("plan", "light"): several on one page each have patterns of their own.
std::string shape_markup(const Shape& shape, std::string_view drawing);
std::string shapes_markup(const std::vector<Shape>& shapes, std::string_view drawing);

} // namespace rillwatt
