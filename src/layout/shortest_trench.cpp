#include "shortest_trench.hpp"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/astar_search.hpp>

#include "outline_geometry.hpp"
#include <algorithm>
#include <limits>

namespace rillwatt {
namespace {

using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS, boost::no_property,
                                    boost::property<boost::edge_weight_t, double>>;

/// The straight line to the goal: never more than what is left to go.
class StraightToGoal : public boost::astar_heuristic<Graph, double> {
  public:
    StraightToGoal(const std::vector<PlanPoint>& points, PlanPoint from, PlanPoint goal)
        : points_(&points), from_(from), goal_(goal) {}

    double operator()(std::size_t v) const {
        const std::size_t n = points_->size();
        if (v > n) return 0;
        return norm(goal_ - (v == n ? from_ : (*points_)[v]));
    }

  private:
    const std::vector<PlanPoint>* points_;
    PlanPoint from_;
    PlanPoint goal_;
};

/// Gives the search the edges of a point when it first gets there, until it has got to the goal: then no
/// point leads on any more, and the search ends by itself. (An exception, the graph library's own way out,
/// costs more than most searches.)
class EdgesOnArrival : public boost::default_astar_visitor {
  public:
    EdgesOnArrival(VisibilityGraph& sight, Graph& graph, PlanPoint from, PlanPoint goal, bool& arrived)
        : sight_(&sight), graph_(&graph), from_(from), goal_(goal), arrived_(&arrived),
          to_goal_(sight.points().size(), -1.0) {
        for (const VisibilityGraph::Neighbour& n : sight.seen_from(goal))
            to_goal_[n.point] = n.distance;
    }

    void examine_vertex(std::size_t v, const Graph&) {
        const std::size_t n = sight_->points().size();
        *arrived_ = *arrived_ || v == n + 1;
        if (*arrived_) return boost::clear_out_edges(v, *graph_);
        const bool at_start = v == n;
        for (const VisibilityGraph::Neighbour& to :
             at_start ? sight_->seen_from(from_) : sight_->neighbours(v))
            boost::add_edge(v, to.point, to.distance, *graph_);
        if (at_start && sight_->sees(from_, goal_)) boost::add_edge(v, n + 1, norm(goal_ - from_), *graph_);
        if (!at_start && to_goal_[v] >= 0) boost::add_edge(v, n + 1, to_goal_[v], *graph_);
    }

  private:
    VisibilityGraph* sight_;
    Graph* graph_;
    PlanPoint from_;
    PlanPoint goal_;
    bool* arrived_;
    std::vector<double> to_goal_;
};

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
    VisibilityGraph* base = open.empty() ? nullptr : &graph({});
    return graphs_.try_emplace(open, map_, sleeves_, open, base).first->second;
}

OpenObstacles TrenchFinder::opened_by(PlanPoint from, PlanPoint to) const {
    const OpenObstacles a = map_.opened_by(from);
    const OpenObstacles b = map_.opened_by(to);
    OpenObstacles both;
    std::set_union(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(both));
    return both;
}

std::optional<Trench> TrenchFinder::shortest(PlanPoint first, PlanPoint last) {
    const PlanPoint from = map_.settled(first);
    const PlanPoint to = map_.settled(last);
    Trench trench;
    trench.open = opened_by(from, to);
    VisibilityGraph& sight = graph(trench.open);
    const std::size_t start = sight.points().size();
    const std::size_t goal = start + 1;
    Graph graph(goal + 1);
    std::vector<std::size_t> before(goal + 1);
    std::vector<double> length(goal + 1);
    bool arrived = false; // the search keeps copies of its visitor
    boost::astar_search(graph, start, StraightToGoal(sight.points(), from, to),
                        boost::predecessor_map(before.data())
                            .distance_map(length.data())
                            .visitor(EdgesOnArrival(sight, graph, from, to, arrived)));
    if (!arrived) return std::nullopt;
    const auto place = [&](std::size_t v) { return v == start ? from : v == goal ? to : sight.points()[v]; };
    for (std::size_t v = goal; v != start; v = before[v])
        trench.legs.push_back({place(before[v]), place(v), sight.sleeve_between(before[v], v)});
    std::reverse(trench.legs.begin(), trench.legs.end());
    trench.legs = joined_up(trench.legs);
    trench.length = length[goal];
    return trench;
}

std::vector<PlanPoint> TrenchFinder::reachable(PlanPoint from, const OpenObstacles& open) {
    VisibilityGraph& sight = graph(open);
    std::vector<char> reached(sight.points().size(), 0);
    std::vector<std::size_t> waiting;
    const auto reach = [&](const std::vector<VisibilityGraph::Neighbour>& next) {
        for (const VisibilityGraph::Neighbour& n : next) {
            if (reached[n.point]) continue;
            reached[n.point] = 1;
            waiting.push_back(n.point);
        }
    };
    reach(sight.seen_from(from));
    while (!waiting.empty()) {
        const std::size_t point = waiting.back();
        waiting.pop_back();
        reach(sight.neighbours(point));
    }
    // A corner where no path turns is never gone on to, but a trench may end at it all the same.
    const auto ends_at = [&](std::size_t i) {
        if (sight.shut_in(i)) return false;
        const std::vector<VisibilityGraph::Neighbour>& seen = sight.seen_from(sight.points()[i]);
        return std::any_of(seen.begin(), seen.end(), [&](const auto& n) { return reached[n.point] != 0; }) ||
               sight.sees(from, sight.points()[i]);
    };
    std::vector<PlanPoint> out{from};
    for (std::size_t i = 0; i < reached.size(); ++i)
        if (reached[i] || ends_at(i)) out.push_back(sight.points()[i]);
    return out;
}

} // namespace rillwatt
