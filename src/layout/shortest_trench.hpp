#pragma once

#include "rillwatt/site/site.hpp"

#include "obstacle_map.hpp"
#include "visibility_graph.hpp"
#include <map>
#include <optional>
#include <vector>

namespace rillwatt {

/// One straight piece of a route.
struct TrenchLeg {
    PlanPoint a;
    PlanPoint b;
    std::optional<std::size_t> sleeve; ///< index into Site::sleeves when the piece lies in one
};

/// A shortest trench between two places.
struct Trench {
    std::vector<TrenchLeg> legs;
    double length = 0;  ///< metres
    OpenObstacles open; ///< what the ends opened
};

/// Finds shortest trenches on one site. What it learns about who sees whom is kept between questions.
class TrenchFinder {
  public:
    explicit TrenchFinder(const Site& site);

    const ObstacleMap& map() const { return map_; }

    /// Empty when there is no way.
    std::optional<Trench> shortest(PlanPoint from, PlanPoint to);

    /// Every corner and sleeve end that a trench from that place can reach, and the place itself, when its
    /// ends open these obstacles.
    std::vector<PlanPoint> reachable(PlanPoint from, const OpenObstacles& open);

    /// Obstacles that a route between two places may pass.
    OpenObstacles opened_by(PlanPoint from, PlanPoint to) const;

  private:
    VisibilityGraph& graph(const OpenObstacles& open);

    ObstacleMap map_;
    std::vector<Sleeve> sleeves_;
    std::map<OpenObstacles, VisibilityGraph> graphs_;
};

} // namespace rillwatt
