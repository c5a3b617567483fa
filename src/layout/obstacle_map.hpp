#pragma once

#include "rillwatt/layout/outline_index.hpp"
#include "rillwatt/site/site.hpp"

#include <cstddef>
#include <vector>

namespace rillwatt {

/// An area that no trench may pass through, its outline tidied and anticlockwise.
struct Obstacle {
    std::size_t area = 0; ///< index into Site::areas
    AreaKind kind = AreaKind::paving;
    std::vector<PlanPoint> outline;
    bool gap_closed = false; ///< its outline was moved to close a gap to another
};

/// Indexes of obstacles that one route may pass because an end of it lies in them. Sorted, without repeats.
using OpenObstacles = std::vector<std::size_t>;

/// Which directions are barred around a point: what a path sees that stands there.
class Surroundings {
  public:
    /// A barred sector, anticlockwise from `from` (radians) over `span`.
    struct Sector {
        double from = 0;
        double span = 0;
    };

    explicit Surroundings(std::vector<Sector> barred = {}) : barred_(std::move(barred)) {}

    /// Whether a path may leave in that direction (radians). The border of a barred sector is free.
    bool free(double direction) const;

    /// Whether a shortest path that leaves in that direction can have turned here: something barred lies less
    /// than half a turn to the one side or the other.
    bool worth_turning(double direction) const;

    /// Whether any shortest path turns here at all.
    bool is_turning_point() const;

    /// Whether no direction is free.
    bool enclosed() const;

  private:
    std::vector<Sector> barred_;
};

/// The areas a trench has to go round, indexed for fast questions about straight pieces of trench.
///
/// What is barred is the inside of all obstacles taken together: edges and corners may be touched, but a seam
/// between two areas that share it lies inside. An obstacle that is open for a route bars nothing, except
/// where a kind that wins over it lies on top: water over building over paving.
class ObstacleMap {
  public:
    explicit ObstacleMap(const Site& site);

    const std::vector<Obstacle>& obstacles() const { return obstacles_; }

    /// Obstacles that cover the point, outline included.
    std::vector<std::size_t> covering(PlanPoint point) const;

    /// What an end of a route opens: the water it lies in; else, when it is shut in on all sides, the paving
    /// and buildings it lies in.
    OpenObstacles opened_by(PlanPoint end) const;

    /// A point that lies inside obstacles by no more than the rounding of a tape reading, moved to the edge
    /// that it was meant to be at; any other point as it is.
    PlanPoint settled(PlanPoint point) const;

    Surroundings surroundings(PlanPoint point, const OpenObstacles& open) const;

    /// Whether a straight trench is possible. `hint` is the number of an edge to try first, and is set to the
    /// one found in the way: neighbouring questions are mostly barred by the same edge.
    bool passable(PlanPoint a, PlanPoint b, const OpenObstacles& open, std::size_t* hint = nullptr) const;

    /// Whether a piece of trench could be affected by `open`: when not, the answer is that with nothing open.
    bool near_open(PlanPoint a, PlanPoint b, const OpenObstacles& open) const;

    /// Points where the outline of an open obstacle crosses that of another obstacle.
    std::vector<PlanPoint> crossings_with(const OpenObstacles& open) const;

    /// Where a straight piece meets outlines, as shares of its length in order, 0 and 1 among them.
    std::vector<double> cuts(PlanPoint a, PlanPoint b) const;

    /// Stretches of a straight piece that lie inside one obstacle and not under a kind that wins over it.
    double length_inside(PlanPoint a, PlanPoint b, std::size_t obstacle) const;

    /// The edges of all obstacle outlines, by number; `outline` is the number of the obstacle.
    using Edge = OutlineIndex::Side;
    const std::vector<Edge>& edges() const { return outlines_.sides(); }
    const PlanIndex& edge_index() const { return outlines_.side_index(); }

    /// Obstacles whose box meets another, rising.
    std::vector<std::size_t> near(const PlanBox& box) const { return outlines_.near(box); }

    /// Where a point lies to one obstacle.
    Location locate(std::size_t obstacle, PlanPoint p) const { return outlines_.locate(obstacle, p); }

  private:
    /// The sides of a directed piece of line, at a point of it, that lie inside an obstacle.
    struct Sides {
        bool left = false;
        bool right = false;
    };

    bool barred_between(PlanPoint a, PlanPoint b, const OpenObstacles& open) const;
    Sides sides_inside(std::size_t obstacle, PlanPoint p, PlanPoint along) const;
    void add_sectors(std::size_t obstacle, PlanPoint p, std::vector<Surroundings::Sector>& out) const;
    std::vector<std::size_t> edges_touching(std::size_t obstacle, PlanPoint p) const;

    std::vector<Obstacle> obstacles_;
    OutlineIndex outlines_;
};

} // namespace rillwatt
