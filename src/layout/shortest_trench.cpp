#include "shortest_trench.hpp"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/astar_search.hpp>

#include <algorithm>
#include <limits>
#include <utility>

namespace rillwatt {
namespace {

using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS, boost::no_property,
                                    boost::property<boost::edge_weight_t, double>>;

/// The part of a visibility graph that a route between two places no longer than that can touch: the points
/// of an ellipse round the two, numbered from 0 in the graph's order. The start and the goal follow.
struct Ellipse {
    PlanPoint from;
    PlanPoint goal;
    double bound = 0;                ///< metres, of the whole route
    std::vector<std::size_t> points; ///< of the graph, rising

    std::size_t start() const { return points.size(); }
    std::size_t end() const { return points.size() + 1; }

    /// The number here of one of the graph's points, when it lies inside.
    std::optional<std::size_t> number(std::size_t point) const {
        const auto it = std::lower_bound(points.begin(), points.end(), point);
        if (it == points.end() || *it != point) return std::nullopt;
        return static_cast<std::size_t>(it - points.begin());
    }
};

Ellipse ellipse(const VisibilityGraph& sight, PlanPoint from, PlanPoint goal, double bound) {
    Ellipse part{from, goal, bound, {}};
    const PlanPoint middle = from + 0.5 * (goal - from);
    for (const std::size_t i : sight.points_near(middle, bound / 2 * (1 + 1e-9)))
        if (norm(sight.point(i) - from) + norm(sight.point(i) - goal) <= bound) part.points.push_back(i);
    return part;
}

/// The straight line to the goal: never more than what is left to go.
class StraightToGoal : public boost::astar_heuristic<Graph, double> {
  public:
    StraightToGoal(const VisibilityGraph& sight, const Ellipse& part) : sight_(&sight), part_(&part) {}

    double operator()(std::size_t v) const {
        if (v > part_->start()) return 0;
        return norm(part_->goal - (v == part_->start() ? part_->from : sight_->point(part_->points[v])));
    }

  private:
    const VisibilityGraph* sight_;
    const Ellipse* part_;
};

/// Gives the search the edges of a point when it first gets there, until it has got to the goal: then no
/// point leads on any more, and the search ends by itself. (An exception, the graph library's own way out,
/// costs more than most searches.)
class EdgesOnArrival : public boost::default_astar_visitor {
  public:
    EdgesOnArrival(VisibilityGraph& sight, const Ellipse& part, Graph& graph, bool& arrived)
        : sight_(&sight), part_(&part), graph_(&graph), arrived_(&arrived),
          to_goal_(part.points.size(), -1.0) {
        for (const VisibilityGraph::Neighbour& n : sight.seen_from(part.goal, part.bound))
            if (const auto inside = part.number(n.point)) to_goal_[*inside] = n.distance;
    }

    void examine_vertex(std::size_t v, const Graph&) {
        *arrived_ = *arrived_ || v == part_->end();
        if (*arrived_) return boost::clear_out_edges(v, *graph_);
        const bool at_start = v == part_->start();
        for (const VisibilityGraph::Neighbour& to : at_start
                                                        ? sight_->seen_from(part_->from, part_->bound)
                                                        : sight_->neighbours(part_->points[v], part_->bound))
            if (const auto inside = part_->number(to.point))
                boost::add_edge(v, *inside, to.distance, *graph_);
        if (!at_start && to_goal_[v] >= 0) boost::add_edge(v, part_->end(), to_goal_[v], *graph_);
    }

  private:
    VisibilityGraph* sight_;
    const Ellipse* part_;
    Graph* graph_;
    bool* arrived_;
    std::vector<double> to_goal_;
};

/// How far round a first look for a route goes: a quarter more than the straight line, and 2 m.
constexpr double least_detour = 1.25;
constexpr double least_room = 2;

/// Whether two pieces of trench are one straight piece.
bool straight_on(const TrenchLeg& a, const TrenchLeg& b) {
    return !a.sleeve && !b.sleeve && dot(a.b - a.a, b.b - b.a) > 0 &&
           same_place(nearest_on_segment(a.a, b.b, a.b), a.b);
}

std::vector<TrenchLeg> joined_up(const std::vector<TrenchLeg>& legs) {
    std::vector<TrenchLeg> out;
    for (const TrenchLeg& leg : legs) {
        if (same_place(leg.a, leg.b) && legs.size() > 1) continue;
        if (!out.empty() && straight_on(out.back(), leg))
            out.back().b = leg.b;
        else
            out.push_back(leg);
    }
    return out;
}

} // namespace

TrenchFinder::TrenchFinder(const Site& site) : map_(site), sleeves_(site.sleeves) {}

VisibilityGraph& TrenchFinder::graph(const OpenObstacles& open) {
    if (const auto it = graphs_.find(open); it != graphs_.end()) return it->second;
    if (open.empty()) return graphs_.try_emplace(open, map_, sleeves_).first->second;
    return graphs_.try_emplace(open, graph({}), open).first->second;
}

OpenObstacles TrenchFinder::opened_by(PlanPoint from, PlanPoint to) const {
    const OpenObstacles a = map_.opened_by(from);
    const OpenObstacles b = map_.opened_by(to);
    OpenObstacles both;
    std::set_union(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(both));
    return both;
}

namespace {

/// The shortest route within an ellipse, when there is one.
std::optional<Trench> shortest_within(VisibilityGraph& sight, const Ellipse& part) {
    Graph graph(part.end() + 1);
    std::vector<std::size_t> before(part.end() + 1);
    std::vector<double> length(part.end() + 1);
    bool arrived = false; // the search keeps copies of its visitor
    boost::astar_search(graph, part.start(), StraightToGoal(sight, part),
                        boost::predecessor_map(before.data())
                            .distance_map(length.data())
                            .visitor(EdgesOnArrival(sight, part, graph, arrived)));
    if (!arrived) return std::nullopt;
    const auto place = [&](std::size_t v) {
        return v == part.start() ? part.from : v == part.end() ? part.goal : sight.point(part.points[v]);
    };
    const auto sleeve = [&](std::size_t a, std::size_t b) -> std::optional<std::size_t> {
        if (std::max(a, b) >= part.start()) return std::nullopt;
        return sight.sleeve_between(part.points[a], part.points[b]);
    };
    Trench trench;
    for (std::size_t v = part.end(); v != part.start(); v = before[v])
        trench.legs.push_back({place(before[v]), place(v), sleeve(before[v], v)});
    std::reverse(trench.legs.begin(), trench.legs.end());
    trench.legs = joined_up(trench.legs);
    trench.length = length[part.end()];
    return trench;
}

} // namespace

/// A route no longer than the bound of an ellipse lies inside it: so does the shortest, once one is found
/// that is no longer. Until then the ellipse grows.
std::optional<Trench> TrenchFinder::shortest(PlanPoint first, PlanPoint last) {
    const PlanPoint from = map_.settled(first);
    const PlanPoint to = map_.settled(last);
    const OpenObstacles open = opened_by(from, to);
    VisibilityGraph& sight = graph(open);
    const double straight = norm(to - from);
    if (sight.sees(from, to)) return Trench{{{from, to, std::nullopt}}, straight, open};
    double bound = least_detour * straight + least_room;
    while (true) {
        const Ellipse part = ellipse(sight, from, to, bound);
        std::optional<Trench> trench = shortest_within(sight, part);
        if (trench && trench->length <= bound) {
            trench->open = open;
            return trench;
        }
        if (!trench && part.points.size() == sight.size()) return std::nullopt;
        bound = trench ? trench->length * (1 + 1e-12) : 2 * bound;
    }
}

namespace {

/// Finds out which points of a graph a place can reach. Whether two points far from each other see each other
/// is asked last and only between points that are reached and points that are not: one of the two is few.
class Flood {
  public:
    Flood(VisibilityGraph& sight, PlanPoint from) : sight_(&sight), reached_(sight.size(), 0) {
        reach(sight.seen_from(from, everywhere));
        spread();
        while (reach_farther())
            spread();
    }

    const std::vector<char>& reached() const { return reached_; }

    /// The points that are reached, or those that are not, rising.
    std::vector<std::size_t> all(bool reached) const {
        std::vector<std::size_t> out;
        for (std::size_t i = 0; i < reached_.size(); ++i)
            if ((reached_[i] != 0) == reached) out.push_back(i);
        return out;
    }

  private:
    static constexpr double everywhere = 1e9; ///< metres
    static constexpr double nearby = 10;      ///< metres

    bool reach(const std::vector<VisibilityGraph::Neighbour>& next) {
        bool more = false;
        for (const VisibilityGraph::Neighbour& n : next) {
            if (reached_[n.point]) continue;
            reached_[n.point] = 1;
            waiting_.push_back(n.point);
            more = true;
        }
        return more;
    }

    void spread() {
        while (!waiting_.empty()) {
            const std::size_t point = waiting_.back();
            waiting_.pop_back();
            reach(sight_->neighbours(point, nearby));
        }
    }

    bool reach_farther() {
        const std::vector<std::size_t> inside = all(true);
        const std::vector<std::size_t> outside = all(false);
        bool more = false;
        if (inside.size() <= outside.size()) {
            for (const std::size_t i : inside)
                more |= reach(sight_->neighbours(i, everywhere));
            return more;
        }
        for (const std::size_t i : outside) {
            const auto& seen = sight_->neighbours(i, everywhere);
            if (std::any_of(seen.begin(), seen.end(), [&](const auto& n) { return reached_[n.point] != 0; }))
                more |= reach({{i, 0}});
        }
        return more;
    }

    VisibilityGraph* sight_;
    std::vector<char> reached_;
    std::vector<std::size_t> waiting_;
};

} // namespace

std::vector<PlanPoint> TrenchFinder::reachable(PlanPoint from, const OpenObstacles& open) {
    VisibilityGraph& sight = graph(open);
    const Flood flood(sight, from);
    const std::vector<std::size_t> inside = flood.all(true);
    // A corner where no path turns is never gone on to, but a trench may end at it all the same.
    const auto ends_at = [&](std::size_t i) {
        if (sight.shut_in(i)) return false;
        const PlanPoint corner = sight.point(i);
        const auto leads_there = [&](std::size_t k) { return sight.may_come_from(k, corner); };
        return std::any_of(inside.begin(), inside.end(), leads_there) || sight.sees(from, corner);
    };
    std::vector<PlanPoint> out{from};
    for (std::size_t i = 0; i < sight.size(); ++i)
        if (flood.reached()[i] || ends_at(i)) out.push_back(sight.point(i));
    return out;
}

} // namespace rillwatt
