#pragma once

#include "rillwatt/quantity/point.hpp"

#include "obstacle_map.hpp"
#include <cstddef>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace rillwatt {

/// Who sees whom among the turning points of shortest trenches: corners of obstacles and ends of sleeves.
///
/// Each point's neighbours are looked up when a search first reaches it and kept. A graph for routes that
/// open some obstacles asks the graph with nothing open for everything away from those.
class VisibilityGraph {
  public:
    struct Neighbour {
        std::size_t point = 0;
        double distance = 0; ///< metres
    };

    VisibilityGraph(const ObstacleMap& map, const std::vector<Sleeve>& sleeves, OpenObstacles open,
                    VisibilityGraph* with_nothing_open = nullptr);

    const std::vector<PlanPoint>& points() const { return points_; }
    const OpenObstacles& open() const { return open_; }

    /// Points a shortest trench may go on to from one of the graph's points.
    const std::vector<Neighbour>& neighbours(std::size_t point);

    /// Points of the graph a shortest trench may come from or go to at a place outside the graph.
    const std::vector<Neighbour>& seen_from(PlanPoint place);

    /// Whether a straight trench is possible.
    bool sees(PlanPoint a, PlanPoint b) const;

    /// Whether a point of the graph lies inside obstacles on all sides.
    bool shut_in(std::size_t point) const { return vertices_[point].surroundings.enclosed(); }

    /// The sleeve that joins two of the graph's points, by index into the site's sleeves.
    std::optional<std::size_t> sleeve_between(std::size_t a, std::size_t b) const;

  private:
    struct Vertex {
        Surroundings surroundings;
        bool corner =
            true; ///< a path only passes it to turn; the end of a sleeve it may also leave straight on
        bool affected = false; ///< lies on an open obstacle
        std::optional<std::vector<Neighbour>> neighbours;
    };

    void add_point(PlanPoint p, bool corner);
    bool may_leave(const Vertex& vertex, double direction) const;
    bool joined(std::size_t a, std::size_t b, std::size_t* hint) const;

    const ObstacleMap* map_;
    OpenObstacles open_;
    VisibilityGraph* base_;
    std::vector<PlanPoint> points_;
    std::vector<Vertex> vertices_;
    std::size_t sleeve_points_end_ = 0; ///< ends of sleeve k are points 2k and 2k + 1
    std::map<std::pair<double, double>, std::vector<Neighbour>> seen_;
};

} // namespace rillwatt
