#pragma once

#include "rillwatt/search/transformer_sizing.hpp"

#include <optional>
#include <vector>

namespace rillwatt::search {

/// Prices per metre of the cables sold in spools, one for each of SizeProblem::spools.
using SpoolPrices = std::vector<double>;

/// A site with other prices on its spooled cables, and its transformers sized by them.
///
/// Whatever the prices, no choice has a smaller value (transformers, cable by length, and metres of spooled
/// cable at these prices) than `bound()`. So each set of prices is a valid inequality on the metres that a
/// choice may have: the site's side of a Lagrangian decomposition between wiring and spools.
class PricedSite {
  public:
    PricedSite(const SizeProblem& problem, SpoolPrices prices);
    PricedSite(const PricedSite&) = delete;
    PricedSite& operator=(const PricedSite&) = delete;
    ~PricedSite() = default;

    void search(std::size_t limit, Effort& effort);

    const SpoolPrices& prices() const { return prices_; }
    const SizeProblem& problem() const { return problem_; }
    std::vector<TransformerSizing>& sizings() { return sizings_; }
    double bound() const;
    std::vector<std::optional<Proposal>> proposals() const;

  private:
    SpoolPrices prices_;
    SizeProblem problem_;
    std::vector<TransformerSizing> sizings_;
};

/// Sizes every transformer by itself, pass by pass, until all are settled or `effort` has used `limit`. One
/// pass is made in any case.
void size_each(std::vector<TransformerSizing>& sizings, std::size_t limit, const SizeOptions& options,
               Effort& effort);

} // namespace rillwatt::search
