#pragma once

#include "rillwatt/search/problem.hpp"

#include <cstddef>
#include <vector>

namespace rillwatt::search {

/// What a volt is worth at each point of a run.
///
/// Every lamp is given a price for each volt it lacks, and its window is then forgotten. What is left is a
/// choice for each length (its price and that of the volts it costs), coupled by the order of thickness
/// alone: one sweep over the tree finds the least of it, and whatever the prices, that is a lower bound on
/// the cost (Lagrange). The prices are moved step by step to where the bound is high (subgradients). A sweep
/// the other way then tells what the rest of the run costs at least, for a part that needs some volts and has
/// some thickness. Each length is taken to carry the least current it can: where currents depend on the
/// choice, real drops are no less, so that the bound holds there too.
class VoltPrices {
  public:
    /// `top` is the most volts at the head in the case looked at; of choices that cost more than `limit`
    /// nothing need be known.
    VoltPrices(const SizeProblem& problem, const RunProblem& run, Supplied supplied, double top,
               double limit);

    /// Least cost of the open lengths of the run.
    double bound() const { return bound_; }

    /// Nodes looked at to find the prices.
    std::size_t looked_at() const { return looked_at_; }

    /// Least cost of everything but the part behind a node's feed point that needs `low` volts there.
    double rest(std::size_t node, double low, int thickness) const {
        return rest_[cell(node, thickness)] + price_[node] * (low - top_);
    }

    /// The same when the part holds the later siblings of the node too.
    double rest_when_joined(std::size_t node, double low, int thickness) const {
        return joined_[cell(node, thickness)] + joined_price_[node] * (low - top_);
    }

  private:
    /// A cable that a length may get.
    struct Option {
        double cost = 0;
        double volts = 0; ///< dropped along the length
        int below = 0;    ///< rank of the thickest that may follow it
        int rank = 0;     ///< as the length that feeds it sees it
    };
    /// A length with the point at its far end.
    struct Part {
        int parent = -1;
        bool has_lamp = false;
        double low = 0;   ///< volts its lamp needs
        double price = 0; ///< of a volt its lamp lacks
        std::vector<Option> options;
    };
    using Table = std::vector<double>; ///< over nodes and ranks

    std::size_t cell(std::size_t node, int rank) const {
        return node * ranks_ + static_cast<std::size_t>(rank);
    }
    std::size_t feed_of(std::size_t node) const; ///< the number of nodes where it is the head
    void gather(const SizeProblem& problem, const RunProblem& run, Supplied supplied);
    void climb(double limit);
    double sweep_up();
    void find_lacks(std::vector<double>& lacks) const;
    bool move_prices(std::vector<double>& lacks, double distance);
    std::vector<double> prices() const;
    void set_prices(const std::vector<double>& prices);
    void sweep_down();
    void bound_child(std::size_t child, const Table& others, std::size_t row, Table& table) const;

    double top_;
    std::size_t ranks_ = 1;
    int thickest_ = 0;
    std::vector<Part> parts_;
    std::vector<double> price_; ///< of a volt at each node's feed: of all lamps behind it
    Table least_;               ///< of each node's part with its own cable, none thicker than the rank
    Table below_;               ///< of what hangs at each node's point; last: at the head
    double bound_ = 0;
    std::size_t looked_at_ = 0;
    Table rest_;
    Table joined_;
    std::vector<double> joined_price_;
};

} // namespace rillwatt::search
