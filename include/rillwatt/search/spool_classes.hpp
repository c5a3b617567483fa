#pragma once

#include "rillwatt/search/packing_bounds.hpp"
#include "rillwatt/search/priced_site.hpp"

#include <optional>
#include <vector>

namespace rillwatt::search {

/// Every total length of spools of each cable that a better choice could buy ("class"), with a lower bound on
/// the cost of the choices that buy it.
///
/// A class that buys S_k metres of cable k costs p_k S_k for it and leaves at most S_k less the typed pieces
/// T_k to be laid. By the inequality of a priced site with prices l and bound v, what is not spooled then
/// costs at least v - sum l_k (S_k - T_k); so the class costs at least sum p_k S_k + v - sum l_k (S_k - T_k).
/// The classes hold the whole spools apart from the wiring, and the priced sites the wiring apart from the
/// spools (a Lagrangian decomposition whose master problem is solved by enumeration).
class SpoolClasses {
  public:
    explicit SpoolClasses(const SizeProblem& problem);

    /// Lists the classes that cost less than `limit`. False, and none are listed, where there are too many.
    bool list(double limit, double least_rest);

    /// An inequality: with these prices no choice has a smaller value.
    void add(const SpoolPrices& prices, double value);

    /// Forgets classes that are not below the limit.
    void drop(double limit);

    bool listed() const { return listed_; }
    std::size_t size() const { return bounds_.size(); }
    bool worth_work() const;      ///< whether a class is left that was not set aside
    std::size_t cheapest() const; ///< index of the one of the least bound
    void set_aside(std::size_t index) { aside_[index] = 1; }
    double bound(std::size_t index) const { return bounds_[index]; }

    /// Least bound of any class; `limit` where none is left.
    double bound_or(double limit) const;

    /// The same once choices whose value at these prices is below `value` are left out.
    double bound_above(const SpoolPrices& prices, double value, double limit) const;

    /// Value at these prices from which on every choice costs `limit` or more.
    double value_needed(const SpoolPrices& prices, double limit) const;

    /// What a class costs at least by one inequality.
    double class_bound(std::size_t index, const SpoolPrices& prices, double value) const;

    /// Metres of each cable that a class leaves for what is chosen.
    std::vector<double> room(std::size_t index) const;

  private:
    bool list_from(std::size_t spool, double cost, std::vector<double>& metres, double limit);

    const SizeProblem& problem_;
    std::vector<SpoolTotals> totals_;
    std::vector<Length> typed_; ///< of each cable
    std::vector<char> open_;    ///< whether the cable may be chosen
    double most_open_ = 0;      ///< metres that are to be chosen
    double rounding_ = 0;       ///< metres by which sums of pieces may differ from it
    bool all_spooled_ = true;
    double fixed_cost_ = 0; ///< typed cable bought by length, spools of cables that may not be chosen
    bool listed_ = false;
    std::vector<std::vector<double>> metres_; ///< of each class: total of each cable
    std::vector<double> costs_;               ///< of its spools and what is fixed
    std::vector<double> bounds_;
    std::vector<char> aside_;
};

} // namespace rillwatt::search
