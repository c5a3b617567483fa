#pragma once

#include "rillwatt/search/spool_classes.hpp"
#include "rillwatt/search/spool_cost.hpp"

#include <map>
#include <optional>
#include <vector>

namespace rillwatt::search {

/// Lists the ways to serve each transformer at the prices of a priced site, up to a limit on the site's
/// value, and puts the lists together.
///
/// A way is left out only when another of its transformer costs no more by length and cuts, of each spooled
/// cable, the same pieces or none: then whatever is packed with the one can be packed with the other. Where
/// nothing else is left out, the best combination is the optimum.
class SpoolListing {
  public:
    /// `limit`: value of the site at these prices up to which ways are wanted.
    SpoolListing(const SizeProblem& problem, PricedSite& priced, SpoolCost& cost, double limit,
                 Effort& effort);

    /// Lists and combines. Improves the choice and its cost.
    void improve(std::vector<std::optional<Proposal>>& best, double& cost);

    /// Value at these prices below which every choice has been looked at; no more than the limit.
    double value_seen() const { return value_seen_; }

    /// Least cost that a choice which was looked at may have; infinite when all are settled.
    double unsettled() const { return unsettled_; }

  private:
    struct Way {
        Proposal proposal;
        Purchase bought;
        double value = 0; ///< at the priced site's prices
    };
    struct Partial {
        double value = 0;
        Purchase bought;
        std::vector<std::size_t> ways; ///< of the transformers so far
    };

    void list(std::size_t t, double limit, Effort& effort);
    bool known_already(const std::vector<Way>& ways, const Purchase& bought) const;
    std::vector<Partial> extended(const std::vector<Partial>& partials, std::size_t t, double cost);
    double covering_cost(const Purchase& bought) const;
    void settle(const Partial& partial, std::vector<std::optional<Proposal>>& best, double& cost);

    const SizeProblem& problem_;
    PricedSite& priced_;
    SpoolCost& cost_;
    double limit_;
    Effort& effort_;
    std::vector<SpoolTotals> totals_;
    std::vector<std::vector<Way>> lists_;
    double value_seen_;
    double unsettled_;
};

} // namespace rillwatt::search
