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
    bool leader_is_clear(const LabelPlace& place) const;
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
    /// Asks about the next place in the order of their own costs; whether there was one.
    bool ask_next(const LabelObstacles& obstacles);
    /// Tells the places that none not asked about can undercut.
    void tell_settled();

    const LabelRequest* request_;
    std::vector<std::uint32_t> order_; ///< of the places by their own costs
    std::size_t asked_ = 0;
    std::vector<LabelPlace> waiting_; ///< asked about; the cheapest last
    std::vector<LabelPlace> told_;
};

} // namespace rillwatt
