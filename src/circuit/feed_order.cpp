#include "feed_order.hpp"

#include <boost/graph/breadth_first_search.hpp>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/strong_components.hpp>

#include <algorithm>

namespace rillwatt {

namespace {

using FeedGraph = boost::compressed_sparse_row_graph<boost::directedS>;

/// An edge from each feed to what it feeds.
FeedGraph feed_graph(const std::vector<int>& feed) {
    std::vector<std::pair<std::size_t, std::size_t>> edges;
    edges.reserve(feed.size());
    for (std::size_t i = 0; i < feed.size(); ++i)
        if (feed[i] >= 0) edges.emplace_back(static_cast<std::size_t>(feed[i]), i);
    return {boost::edges_are_unsorted_multi_pass, edges.begin(), edges.end(), feed.size()};
}

/// Notes the parts as the search meets them.
class Recorder : public boost::default_bfs_visitor {
  public:
    explicit Recorder(std::vector<int>& order) : order_(&order) {}

    void discover_vertex(std::size_t vertex, const FeedGraph&) {
        order_->push_back(static_cast<int>(vertex));
    }

  private:
    std::vector<int>* order_;
};

/// The loop through a part, against the direction of the feeds and turned round.
std::vector<int> loop_through(const std::vector<int>& feed, int part) {
    std::vector<int> loop{part};
    for (int at = feed[static_cast<std::size_t>(part)]; at != part; at = feed[static_cast<std::size_t>(at)])
        loop.push_back(at);
    std::reverse(loop.begin() + 1, loop.end());
    return loop;
}

} // namespace

std::vector<std::vector<int>> feed_loops(const std::vector<int>& feed) {
    const FeedGraph graph = feed_graph(feed);
    std::vector<std::size_t> component(feed.size());
    const auto count = boost::strong_components(
        graph, boost::make_iterator_property_map(component.begin(), get(boost::vertex_index, graph)));
    std::vector<int> members(count);
    for (const std::size_t c : component)
        ++members[c];
    std::vector<std::vector<int>> loops;
    for (std::size_t i = 0; i < feed.size(); ++i) {
        const bool feeds_itself = feed[i] == static_cast<int>(i);
        if (members[component[i]] < 2 && !feeds_itself) continue;
        loops.push_back(loop_through(feed, static_cast<int>(i)));
        members[component[i]] = 0; // reported
    }
    return loops;
}

std::vector<int> level_order(const std::vector<int>& feed, const std::vector<int>& starts) {
    const FeedGraph graph = feed_graph(feed);
    std::vector<int> order;
    order.reserve(feed.size());
    std::vector<boost::default_color_type> colours(feed.size());
    boost::queue<std::size_t> queue;
    const std::vector<std::size_t> sources(starts.begin(), starts.end());
    boost::breadth_first_visit(
        graph, sources.begin(), sources.end(), queue, Recorder(order),
        boost::make_iterator_property_map(colours.begin(), get(boost::vertex_index, graph)));
    return order;
}

} // namespace rillwatt
