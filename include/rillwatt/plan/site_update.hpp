#pragma once

#include "rillwatt/document/document_edit.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// What was worked out from a site file and goes into it.
struct SiteUpdate {
    std::vector<KeyChange> values;
    std::string appended;
    std::span<const std::string_view> no_bearing; ///< tables of the site file that it was not worked out from
};

} // namespace rillwatt
