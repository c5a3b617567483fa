#pragma once

#include "rillwatt/site/site.hpp"

#include <vector>

namespace rillwatt {

/// A place beside a walk.
struct WalkSlot {
    PlanPoint at;
    double along = 0; ///< metres from the walk's beginning
    int side = 1;     ///< 1: left for someone who walks along it; -1: right
    double back = 0;  ///< metres off the edge
};

/// A walk's centre line by its length.
class WalkLine {
  public:
    explicit WalkLine(const Walk& walk);

    double length() const { return stations_.empty() ? 0 : stations_.back(); }

    std::size_t corners() const { return line_.size(); } ///< its two ends among them

    /// The place `off` metres from the centre line, on the left (side 1) or right (-1).
    WalkSlot beside(double along, int side, double off) const;

    /// The place `off` metres from both lines that meet at an inner corner of the centre line; at a sharp
    /// bend nearer than their mitre.
    WalkSlot at_corner(std::size_t corner, int side, double off) const;

  private:
    std::vector<PlanPoint> line_;  ///< without stretches of no length
    std::vector<double> stations_; ///< metres from the beginning to each of its points
};

} // namespace rillwatt
