#pragma once

#include "rillwatt/check/assessment.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

/// One cable length of a site as a drawing shows it, whether or not the circuits could be built.
struct DrawnCable {
    std::string part;               ///< id of the part it leads to, or of the link
    std::string from;               ///< id of what feeds it
    std::optional<std::size_t> run; ///< index into Site::runs
    std::string cable;              ///< catalog id, its own or inherited; empty: open
    const CableType* type = nullptr;
    const PartLength* length = nullptr;
    std::optional<PlanPoint> from_at;
    std::optional<PlanPoint> to_at;
    const SegmentResult* segment = nullptr; ///< nominal case; null when not solved
};

/// Every cable length: splices, fixtures, links, each in file order. Fixtures without a feed are not among
/// them.
std::vector<DrawnCable> drawn_cables(const Assessment& assessment);

} // namespace rillwatt
