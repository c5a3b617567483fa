#pragma once

#include "rillwatt/search/site_search.hpp"
#include "rillwatt/search/spool_table.hpp"

namespace rillwatt::search {

/// What one way to serve a transformer buys.
struct Purchase {
    Proposal proposal;
    double plain = 0;            ///< transformer and cable sold by length
    std::vector<double> spooled; ///< metres of each of SizeProblem::spools
    double linear = 0;           ///< plain, and spools at their price by length
};

/// Whole spools couple all transformers of a site: what one leaves on a spool another may use.
///
/// Every way to serve a transformer that could be part of an optimum is listed: its linear cost (spools at
/// their price by length) is at most what the best known site leaves for it. The lists are then combined
/// transformer by transformer; a partial combination is dropped when another one buys no more of anything, or
/// when its linear cost with the least of the rest exceeds the best known.
class SpooledSite {
  public:
    SpooledSite(const SizeProblem& problem, std::vector<TransformerSizing>& sizings, Effort& effort);

    /// Improves the answer, its cost and its bound.
    void improve(SiteAnswer& answer);

  private:
    struct Partial {
        double plain = 0;
        double linear = 0;
        std::vector<double> spooled;
        int before = -1; ///< index into trail_
        std::size_t option = 0;
    };
    struct Step {
        int before;
        std::size_t option;
    };

    Purchase purchase(const TransformerProblem& transformer, const Proposal& proposal) const;
    void improve_by(const Listing& how, SiteAnswer& answer);
    void list_options(std::size_t index, double limit, const Listing& how, Effort& effort);
    double combine(SiteAnswer& answer);
    std::vector<Partial> extended(const std::vector<Partial>& partials, std::size_t index, double best);
    void keep_undominated(std::vector<Partial>& partials);
    double whole_cost(const Partial& partial) const;
    void take(const Partial& partial, SiteAnswer& answer) const;

    const SizeProblem& problem_;
    std::vector<TransformerSizing>& sizings_;
    Effort& effort_;
    std::vector<SpoolTable> tables_;
    std::vector<std::vector<Purchase>> lists_;
    std::vector<double> list_bounds_; ///< no way that is not listed costs less, linear
    std::vector<double> least_;       ///< linear, for each transformer
    std::vector<Step> trail_;
    double base_ = 0; ///< typed lengths, linear
    double dropped_ = 0;
};

/// Whole spools of each cable for the metres laid, typed ones included.
double spool_cost(const SizeProblem& problem, const std::vector<SpoolTable>& tables,
                  const std::vector<double>& chosen_metres);

std::vector<SpoolTable> spool_tables(const SizeProblem& problem);

} // namespace rillwatt::search
