#pragma once

#include <string_view>
#include <vector>

namespace rillwatt {

/// What stands under everything that could be acted on, one sentence each.
const std::vector<std::string_view>& cautions();

} // namespace rillwatt
