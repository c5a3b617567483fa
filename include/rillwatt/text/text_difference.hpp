#pragma once

#include <string>
#include <string_view>

namespace rillwatt {

/// The difference of two texts as a unified diff with three lines of context; empty when they are the same.
std::string text_difference(std::string_view before, std::string_view after, std::string_view name);

} // namespace rillwatt
