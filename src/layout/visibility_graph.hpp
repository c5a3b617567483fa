#pragma once

#include "rillwatt/quantity/point.hpp"

#include "obstacle_map.hpp"
#include <cstddef>
#include <map>
#include <optional>
#include <unordered_map>
#include <utility>
#include <vector>

namespace rillwatt {

/// Who sees whom among the turning points of shortest trenches: corners of obstacles and ends of sleeves.
///
/// Each point's neighbours are looked up when a search first reaches it, as far as the search needs them, and
/// kept. A graph for routes that open some obstacles asks the graph with nothing open for everything away
/// from those.
class VisibilityGraph {
  public:
    struct Neighbour {
        std::size_t point = 0;
        double distance = 0; ///< metres
    };

    VisibilityGraph(const ObstacleMap& map, const std::vector<Sleeve>& sleeves);
    VisibilityGraph(VisibilityGraph& with_nothing_open, OpenObstacles open);

    std::size_t size() const { return base_ ? base_->size() + own_points_.size() : own_points_.size(); }
    PlanPoint point(std::size_t i) const;
    const OpenObstacles& open() const { return open_; }

    /// Points of the graph nearer to a place than that (metres), rising.
    std::vector<std::size_t> points_near(PlanPoint place, double within) const;

    /// Points a shortest trench may go on to from one of the graph's points, rising: all that are nearer than
    /// `within` metres, and perhaps some that are not.
    const std::vector<Neighbour>& neighbours(std::size_t point, double within);

    /// The same for a place outside the graph that a shortest trench may come from or go to.
    const std::vector<Neighbour>& seen_from(PlanPoint place, double within);

    /// Whether a shortest trench may end at a place that comes from one of the graph's points.
    bool may_come_from(std::size_t point, PlanPoint place);

    /// Whether a straight trench is possible.
    bool sees(PlanPoint a, PlanPoint b) const;

    /// Whether a point of the graph lies inside obstacles on all sides.
    bool shut_in(std::size_t point) { return vertex(point).surroundings.enclosed(); }

    /// The sleeve that joins two of the graph's points, by index into the site's sleeves.
    std::optional<std::size_t> sleeve_between(std::size_t a, std::size_t b) const;

  private:
    /// Neighbours as far as they have been looked up.
    struct Known {
        double within = 0;
        std::vector<Neighbour> neighbours;
    };

    struct Vertex {
        Surroundings surroundings;
        bool corner =
            true; ///< a path only passes it to turn; the end of a sleeve it may also leave straight on
        bool affected = false; ///< lies on an open obstacle
        Known known;
    };

    Vertex& vertex(std::size_t i);
    bool may_leave(const Vertex& vertex, double direction) const;
    bool may_turn(std::size_t i);
    bool joined(std::size_t a, std::size_t b, std::size_t* hint);
    std::vector<std::size_t> points_between(PlanPoint place, double nearer, double within) const;
    void look_up(std::size_t point, double within, Known& known);

    const ObstacleMap* map_;
    OpenObstacles open_;
    VisibilityGraph* base_ = nullptr;
    std::vector<PlanPoint> own_points_; ///< with nothing open: all; else crossings with what is open
    PlanIndex index_;                   ///< of the own points
    std::size_t sleeve_points_end_ = 0; ///< ends of sleeve k are points 2k and 2k + 1
    std::unordered_map<std::size_t, Vertex> vertices_;
    std::map<std::pair<double, double>, Known> seen_;
};

} // namespace rillwatt
