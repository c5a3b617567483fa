#pragma once

#include "isolux_layer.hpp"
#include "label_placement.hpp"
#include <string>
#include <vector>

namespace rillwatt {

/// The value of a line of equal light, with the places on the line that it could take.
struct IsoluxValue {
    std::string words;
    std::vector<LabelPlace> places;
};

/// One value for each ring that is long enough to bear it, several for a long one. Places where lines of
/// other levels run through the value cost more: there nobody can tell whose it is.
std::vector<IsoluxValue> isolux_values(const std::vector<DrawnIsolux>& lines, double text_size);

} // namespace rillwatt
