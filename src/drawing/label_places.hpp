#pragma once

#include "label_placement.hpp"
#include "sheet_grid.hpp"
#include <cstdint>

namespace rillwatt {

/// The ground that labels stand on, with its symbols and lines where they are found quickly.
class LabelObstacles {
  public:
    LabelObstacles(const LabelGround& ground);

    /// What the place costs among symbols and lines; empty where no label may stand.
    std::optional<double> cost(const LabelPlace& place, std::optional<std::size_t> own_symbol) const;

  private:
    std::optional<double> cost_of_symbols(const LabelPlace& place,
                                          std::optional<std::size_t> own_symbol) const;
    bool leader_is_clear(const LabelPlace& place, std::optional<std::size_t> own_symbol) const;
    double cost_of_lines(const LabelPlace& place) const;

    const LabelGround* ground_;
    SheetGrid symbols_;
    SheetGrid lines_;
    mutable std::vector<std::size_t> found_; ///< room to gather in, kept from one question to the next
};

/// The places that a label could take, the cheapest first. The ground is asked only about as many as are
/// looked at: what a place costs by itself bounds its full cost from below.
class CheapestPlaces {
  public:
    explicit CheapestPlaces(const LabelRequest& request);

    /// How many there are.
    std::size_t count(const LabelObstacles& obstacles);

    /// The k-th cheapest; null when there are not so many.
    const LabelPlace* at(std::size_t k, const LabelObstacles& obstacles);

  private:
    /// A place that was not told yet.
    struct Waiting {
        double cost;
        std::uint32_t place;
        bool known; ///< the cost is the full one, not the bound
    };
    static bool dearer(const Waiting& a, const Waiting& b) {
        return a.cost != b.cost ? a.cost > b.cost : a.place > b.place;
    }
    void ask_next(const LabelObstacles& obstacles);

    const LabelRequest* request_;
    std::vector<Waiting> waiting_; ///< a heap
    std::vector<LabelPlace> told_;
};

} // namespace rillwatt
