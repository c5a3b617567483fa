#pragma once

#include "rillwatt/layout/plan_index.hpp"

#include <cstddef>
#include <vector>

namespace rillwatt {

/// Outlines on the plan, and which of them a point lies in. What a question costs does not grow with the
/// number of outlines, and hardly with the number of their corners.
class OutlineIndex {
  public:
    /// A side of an outline, from one corner to the next.
    struct Side {
        PlanPoint a;
        PlanPoint b;
        std::size_t outline = 0;
    };

    OutlineIndex() = default;
    /// An empty outline covers nothing.
    explicit OutlineIndex(std::vector<std::vector<PlanPoint>> outlines);

    const std::vector<std::vector<PlanPoint>>& outlines() const { return outlines_; }

    /// All sides, outline by outline.
    const std::vector<Side>& sides() const { return sides_; }

    /// The number of an outline's first side: from its first corner to its second.
    std::size_t first_side(std::size_t outline) const { return first_sides_[outline]; }

    /// Finds sides by where they are, a touch tolerance wider on all sides.
    const PlanIndex& side_index() const { return side_index_; }

    /// As `locate` says it of the outline.
    Location locate(std::size_t outline, PlanPoint p) const;

    /// Outlines that may cover the point, and those that do (outline included), rising.
    std::vector<std::size_t> near(PlanPoint p) const { return boxes_.found(p); }
    std::vector<std::size_t> covering(PlanPoint p) const;

    /// Outlines whose box meets another, rising.
    std::vector<std::size_t> near(const PlanBox& box) const { return boxes_.found(box); }

    /// The box of an outline, a touch tolerance wider on all sides.
    const PlanBox& box(std::size_t outline) const { return box_of_[outline]; }

  private:
    std::vector<std::vector<PlanPoint>> outlines_;
    std::vector<PlanBox> box_of_;
    std::vector<std::size_t> first_sides_;
    std::vector<Side> sides_;
    PlanIndex boxes_;
    PlanIndex side_index_;
};

} // namespace rillwatt
