#pragma once

#include "rillwatt/search/labels.hpp"
#include "rillwatt/search/problem.hpp"
#include "rillwatt/search/steady_labels.hpp"
#include "rillwatt/search/supply.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace rillwatt::search {

/// What the rest of a run costs at least, for a part of it that needs some voltage at its feed point.
///
/// Built from a search whose labels never cost too much: going down from the head, the cheapest that serves a
/// node's siblings and everything above its feed point is tabulated over the voltage there. A later search
/// drops every label that with the least of the rest costs more than a choice already known. Volts are
/// counted in cells; each cell takes whichever of its ends is more favourable. The cells of a point cover
/// just the volts that the labels found there need, so they grow finer from search to search.
class Corridor {
  public:
    Corridor(std::size_t nodes, double top);

    /// Labels at the feed point of a node, its own cable included.
    template<class L>
    void record_reach(std::size_t node, const std::vector<L>& labels) {
        std::vector<Step>& steps = reach_[node];
        steps.clear();
        for (const L& label : labels) // by ascending cost
            if (steps.empty() || label.low < steps.back().low) steps.push_back({label.low, label.cost});
        std::reverse(steps.begin(), steps.end());
    }
    /// Labels at a node's own point, before its cable.
    void record_draw(std::size_t node, const std::vector<Label>& labels);
    void record_draw(std::size_t node, const std::vector<SteadyLabel>& labels);
    /// Labels at the head.
    template<class L>
    void record_head(const std::vector<L>& labels) {
        grids_.back() = grid_over(labels);
    }
    /// Tabulates the rest, once. Every node must have been recorded.
    void close(const SizeProblem& problem, const RunProblem& run, const std::vector<int>& candidates,
               const std::vector<Supply>& supplies);

    /// Least cost of everything but the part behind a node's feed point that needs `low` volts there.
    double rest(std::size_t node, double low) const { return look_up(rest_[node], feed_[node], low); }

    /// The same when the part holds the later siblings of the node too.
    double rest_when_joined(std::size_t node, double low) const {
        return look_up(joined_[node], feed_[node], low);
    }

  private:
    using Table = std::vector<double>;
    static constexpr std::size_t coarse_cells = 32; ///< half of them in each kind of cells

    static constexpr std::size_t narrow_cells = 768;
    static constexpr std::size_t wide_cells = 64;
    static constexpr std::size_t cells = narrow_cells + wide_cells;
    static constexpr double volts_rounding = 1e-9; ///< a label so little beyond an end still counts as within

    /// The volts at a point, cell by cell: narrow ones where the labels lie, wide ones from there to the top.
    struct Grid {
        double left = 0;
        double right = 0;
        double narrow = 1; ///< width of a cell
        double wide = 1;
        double narrow_per_volt = 1;
        double wide_per_volt = 1;

        double left_of(std::size_t cell) const {
            return cell < narrow_cells ? left + narrow * static_cast<double>(cell)
                                       : right + wide * static_cast<double>(cell - narrow_cells);
        }
        std::size_t cell_of(double volts) const {
            const double inside = volts - volts_rounding;
            const double place = inside < right ? (inside - left) * narrow_per_volt
                                                : narrow_cells + (inside - right) * wide_per_volt;
            return static_cast<std::size_t>(static_cast<int>(std::clamp(place, 0.0, double{cells})));
        }
    };
    /// The least that is drawn at a point, over coarser cells.
    struct Draw {
        std::array<double, coarse_cells> va{};
        std::array<double, coarse_cells> amps{};
    };
    struct Step {
        double low;
        double cost;
    };

    template<class L>
    Grid grid_over(const std::vector<L>& labels) const;
    Grid grid_between(double least, double most) const;
    double look_up(const Table& table, std::size_t point, double low) const {
        return table.empty() ? 0 : table[grids_[point].cell_of(low)];
    }
    Table least_amps(std::size_t node) const;
    static std::size_t first_of(std::size_t coarse);
    Table above_head(const std::vector<Supply>& supplies) const;
    Table above_point(const SizeProblem& problem, const RunNode& node, std::size_t index,
                      const std::vector<int>& candidates) const;
    Table reach_over(const Grid& grid, std::size_t node) const;
    void close_point(std::size_t point, const std::vector<std::size_t>& fed, const Table& above);

    double top_;
    bool closed_ = false;
    std::vector<Grid> grids_;              ///< of each node's own point; last: the head
    std::vector<std::size_t> feed_;        ///< the point that feeds each node
    std::vector<std::vector<Step>> reach_; ///< least cost of each node's subtree with its cable, over volts
                                           ///< at its feed
    std::vector<Draw> draw_;               ///< at each node's point
    std::vector<Table> rest_;              ///< least cost of everything else
    std::vector<Table> joined_;            ///< without the node's later siblings
};

template<class L>
Corridor::Grid Corridor::grid_over(const std::vector<L>& labels) const {
    double least = top_;
    double most = 0;
    for (const L& label : labels) {
        least = std::min(least, label.low);
        most = std::max(most, label.low);
    }
    return grid_between(least, std::max(most, least));
}

} // namespace rillwatt::search
