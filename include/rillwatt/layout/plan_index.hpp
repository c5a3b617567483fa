#pragma once

#include "rillwatt/quantity/plan_geometry.hpp"

#include <algorithm>
#include <concepts>
#include <cstddef>
#include <memory>
#include <type_traits>
#include <vector>

namespace rillwatt {

/// A box on the plan, sides along the axes, in metres. A new one holds nothing.
struct PlanBox {
    double x_low = 1e300;
    double y_low = 1e300;
    double x_high = -1e300;
    double y_high = -1e300;

    void include(double x, double y) {
        x_low = std::min(x_low, x);
        y_low = std::min(y_low, y);
        x_high = std::max(x_high, x);
        y_high = std::max(y_high, y);
    }
    void include(PlanPoint p) { include(p.x, p.y); }

    /// The box with that much more on each side.
    PlanBox grown(double margin) const {
        return {x_low - margin, y_low - margin, x_high + margin, y_high + margin};
    }

    bool empty() const { return x_high < x_low; }
};

/// The smallest box round some points.
PlanBox box_of(const std::vector<PlanPoint>& points);
PlanBox box_of(PlanPoint a, PlanPoint b);

/// Whether two boxes meet, and whether a straight piece meets a box; borders count.
bool meet(const PlanBox& a, const PlanBox& b);
bool meets(PlanPoint a, PlanPoint b, const PlanBox& box);

/// What an index calls with the number of each box it finds; false ends the search. It must outlive the call.
class IndexVisit {
  public:
    template<class Visit>
    requires(!std::same_as<std::remove_const_t<Visit>, IndexVisit>) IndexVisit(Visit& visit)
        : visit_(const_cast<void*>(static_cast<const void*>(&visit))),
          call_([](void* v, std::size_t i, double d) { return call<Visit>(*static_cast<Visit*>(v), i, d); }) {
    }

    bool operator()(std::size_t index, double distance = 0) const { return call_(visit_, index, distance); }

  private:
    template<class Visit>
    static bool call(Visit& visit, std::size_t index, double distance) {
        if constexpr (requires { visit(index, distance); })
            return visit(index, distance);
        else
            return visit(index);
    }

    void* visit_;
    bool (*call_)(void*, std::size_t, double);
};

/// Boxes on the plan by where they are: an R-tree. Empty boxes are never found. Boxes are numbered in the
/// order in which they were given, and found in no order that anything may depend on, unless it says so.
class PlanIndex {
  public:
    PlanIndex();
    explicit PlanIndex(const std::vector<PlanBox>& boxes);
    ~PlanIndex();
    PlanIndex(PlanIndex&&) noexcept;
    PlanIndex& operator=(PlanIndex&&) noexcept;

    std::size_t size() const;

    /// Every box that meets another; borders count.
    void visit(const PlanBox& box, IndexVisit visit) const;

    /// Every box that a straight piece meets.
    void visit_along(PlanPoint a, PlanPoint b, IndexVisit visit) const;

    /// The boxes from the nearest to the farthest, with their distances in metres.
    void visit_from(PlanPoint p, IndexVisit visit) const;

    /// The numbers of the boxes that meet another, rising.
    std::vector<std::size_t> found(const PlanBox& box) const;
    std::vector<std::size_t> found(PlanPoint p) const { return found({p.x, p.y, p.x, p.y}); }
    std::vector<std::size_t> found_along(PlanPoint a, PlanPoint b) const;

  private:
    struct Tree;
    std::unique_ptr<Tree> tree_;
};

} // namespace rillwatt
