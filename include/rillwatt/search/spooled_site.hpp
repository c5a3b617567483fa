#pragma once

#include "rillwatt/search/site_search.hpp"
#include "rillwatt/search/spool_listing.hpp"
#include "rillwatt/search/spool_swaps.hpp"

#include <memory>

namespace rillwatt::search {

/// Whole spools couple all lengths of a site: what one piece leaves on a spool another may use.
///
/// The problem is taken apart (Lagrangian decomposition: Guignard, Kim, Math. Program. 39 (1987) 215-228).
/// Which spools are bought is one question (SpoolClasses: every total that could beat the best known choice,
/// enumerated); how the site is wired at given prices is the other (PricedSite: label search, transformer by
/// transformer). Between the two the prices move: for the class that looks cheapest, by subgradient steps
/// towards the metres that the wiring lays too many of. Each priced wiring raises the bounds of all classes,
/// and is a start for SpoolSwaps, which looks for choices whose pieces go well into spools. What is left in
/// the end is listed and packed where it is few (SpoolListing). A packing whose own bound does not meet it
/// keeps the site's bound down.
class SpooledSite {
  public:
    /// `linear`: sized at the price by length.
    SpooledSite(const SizeProblem& problem, PricedSite& linear, Effort& effort);

    /// Improves the answer, its cost and its bound.
    void improve(SiteAnswer& answer);

  private:
    bool proven(const SiteAnswer& answer) const;
    void consider(PricedSite& priced, SiteAnswer& answer);
    void anneal(const std::vector<std::optional<Proposal>>& start, SiteAnswer& answer);
    void list_classes(const SiteAnswer& answer);
    void raise_bound(SiteAnswer& answer);
    void work_on_class(std::size_t index, SiteAnswer& answer);
    SpoolPrices step(const PricedSite& priced, const std::vector<double>& room, double distance) const;
    void list_ways(SiteAnswer& answer, std::size_t effort);
    bool few_choices() const;
    PricedSite& sharpest(const SiteAnswer& answer);

    const SizeProblem& problem_;
    PricedSite& linear_;
    Effort& effort_;
    SpoolCost cost_;
    SpoolClasses classes_;
    SpoolSwaps swaps_;
    std::vector<std::unique_ptr<PricedSite>> priced_;
};

} // namespace rillwatt::search
