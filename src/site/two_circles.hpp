#pragma once

#include "rillwatt/quantity/point.hpp"

#include <optional>

namespace rillwatt {

struct Circle {
    PlanPoint centre;
    Metres radius;
};

/// Where two circles meet, for someone who walks from the first centre to the second.
struct MeetingPoints {
    PlanPoint left;
    PlanPoint right;
};

struct CircleMeeting {
    std::optional<MeetingPoints> points;
    Metres gap; ///< how far the circles are from touching, where they do not meet
};

/// Circles that touch within a thousandth of a millimetre meet: rounding must not decide.
CircleMeeting meet(const Circle& first, const Circle& second);

} // namespace rillwatt
