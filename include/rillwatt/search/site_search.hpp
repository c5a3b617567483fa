#pragma once

#include "rillwatt/search/transformer_sizing.hpp"

#include <optional>
#include <vector>

namespace rillwatt::search {

/// The cheapest choice found for a site and how far below it the optimum could lie.
struct SiteAnswer {
    std::vector<std::optional<Proposal>> proposals; ///< one for each of SizeProblem::transformers
    double cost = 0;  ///< everything that is minimised, spools counted whole; infinite when one has no choice
    double bound = 0; ///< infinite when it is proven that nothing can work
    std::vector<std::size_t> hopeless; ///< transformers for which nothing can work, proven
};

/// Steps to examine when none are asked for: grows with the number of lengths.
std::size_t usual_effort(const SizeProblem& problem);

/// Searches a site. One quick pass is made over every transformer whatever the effort, unless that is firm;
/// the time is kept in any case.
SiteAnswer search_site(const SizeProblem& problem, Effort& effort);

} // namespace rillwatt::search
