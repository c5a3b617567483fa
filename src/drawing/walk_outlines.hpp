#pragma once

#include "svg_parts.hpp"
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// A walk on the paper.
struct DrawnWalk {
    std::vector<SheetPoint> line;
    double width = 0;
};

/// The edges of walks with nothing between them, so that what lies on the ground there stays to be read.
/// Walks that meet or cross have one edge round both. `mask` is an id that the page has nowhere else.
std::string walk_outlines(const std::vector<DrawnWalk>& walks, const SheetBox& frame, std::string_view mask);

} // namespace rillwatt
