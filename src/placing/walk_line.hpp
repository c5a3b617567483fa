#pragma once

#include "rillwatt/site/site.hpp"

namespace rillwatt {

/// A place beside a walk.
struct WalkSlot {
    PlanPoint at;
    double along = 0; ///< metres from the walk's beginning
    int side = 1;     ///< 1: left for someone who walks along it; -1: right
};

/// A walk's centre line by its length.
class WalkLine {
  public:
    explicit WalkLine(const Walk& walk) : walk_(walk) {}

    double length() const;

    /// The place `off` metres from the centre line, on the left (side 1) or right (-1).
    WalkSlot beside(double along, int side, double off) const;

  private:
    const Walk& walk_;
};

} // namespace rillwatt
