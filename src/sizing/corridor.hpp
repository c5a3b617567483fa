#pragma once

#include "labels.hpp"
#include "problem.hpp"
#include "supply.hpp"
#include <vector>

namespace rillwatt::sizing {

/// What the rest of a run costs at least, for a part of it that needs some voltage at its feed point.
///
/// Built from a search whose labels never cost too much: going down from the head, the cheapest that serves a
/// node's siblings and everything above its feed point is tabulated over the voltage there. A later search
/// drops every label that with the least of the rest costs more than a choice already known. Volts are
/// counted in cells; each cell takes whichever of its ends is more favourable.
class Corridor {
  public:
    Corridor(std::size_t nodes, double floor, double top);

    /// Labels at the feed point of a node, its own cable included.
    void record_reach(std::size_t node, const std::vector<Label>& labels);
    /// Labels at a node's own point, before its cable.
    void record_draw(std::size_t node, const std::vector<Label>& labels);
    /// Tabulates the rest. Every node must have been recorded.
    void close(const SizeProblem& problem, const RunProblem& run, const std::vector<int>& candidates,
               const std::vector<Supply>& supplies);

    bool closed() const { return closed_; }
    double rest(std::size_t node, double low) const;

  private:
    using Table = std::vector<double>;

    std::size_t cell_of(double volts) const;
    double left(std::size_t cell) const { return floor_ + width_ * static_cast<double>(cell); }
    double least_amps(std::size_t node, std::size_t cell) const;
    Table above_head(const std::vector<Supply>& supplies) const;
    Table above_point(const SizeProblem& problem, const RunNode& node, std::size_t index,
                      const std::vector<int>& candidates) const;

    double floor_;
    double width_;
    bool closed_ = false;
    std::vector<Table> reach_; ///< least cost of each node's subtree with its cable, over volts at its feed
    std::vector<Table> draw_;  ///< least volt-amperes at each node's point, over coarser cells
    std::vector<Table> rest_;  ///< least cost of everything else
};

} // namespace rillwatt::sizing
