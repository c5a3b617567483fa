#pragma once

#include "rillwatt/finding/input_error.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace rillwatt {

/// What a file says by now and did not say when it was read, as one error for each part: where it is written
/// now, and whether it was changed, added or taken out. Comments, spacing and the order of keys say nothing,
/// nor do the tables called `aside`. A text that is no TOML is a change as well: its syntax error.
std::vector<InputError> content_changes(std::string_view as_read, std::string_view by_now,
                                        const FileName& file, std::span<const std::string_view> aside = {});

} // namespace rillwatt
