#pragma once

#include "walk_line.hpp"
#include "workbench.hpp"
#include <vector>

namespace rillwatt {

/// A mesh of places on free ground beside a walk, along both edges at a few distances, and at its corners:
/// every light that is tried stands on one of them.
class PlacesBeside {
  public:
    PlacesBeside(const Workbench& bench, const Walk& walk, WaterRule water);

    /// Ordered along the walk.
    const std::vector<WalkSlot>& mesh() const { return mesh_; }

    double length() const { return line_.length(); }
    double step() const { return step_; } ///< metres along the walk between two stations of the mesh
    const Walk& walk() const { return walk_; }

  private:
    void add_stations();
    void add_corners();
    void add_if_free(WalkSlot slot, double back);

    const Workbench& bench_;
    const Walk& walk_;
    WaterRule water_;
    WalkLine line_;
    double step_;
    std::vector<WalkSlot> mesh_;
};

} // namespace rillwatt
