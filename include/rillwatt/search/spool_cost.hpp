#pragma once

#include "rillwatt/search/packing.hpp"
#include "rillwatt/search/trial.hpp"

#include <map>
#include <optional>
#include <vector>

/// What a choice costs where cable is bought in whole spools: the same question that the bill asks, answered
/// by the same packing.
namespace rillwatt::search {

/// What one or several transformers' choices buy.
struct Purchase {
    double plain = 0;                        ///< transformers, and cable bought by length
    std::vector<std::vector<Length>> pieces; ///< of each of SizeProblem::spools, typed ones left out
};

/// What a proposal buys.
Purchase purchase_of(const SizeProblem& problem, const TransformerProblem& transformer,
                     const Proposal& proposal);

void add(Purchase& to, const Purchase& more);

/// Cost and a lower bound on it.
struct CostRange {
    double cost = 0;
    double bound = 0;
};

/// Packs what is bought, typed pieces included, and remembers every packing.
class SpoolCost {
  public:
    /// `effort`: of one packing.
    explicit SpoolCost(const SizeProblem& problem, std::size_t effort = packing_effort);

    /// Of everything that is bought, typed cable included.
    CostRange of(const Purchase& purchase);

  private:
    CostRange of_spools(std::size_t spool, const std::vector<Length>& pieces);

    const SizeProblem& problem_;
    std::size_t effort_;
    std::vector<std::map<std::vector<Length>, CostRange>> known_; ///< by pieces, ascending
};

/// What a choice for the whole site costs; infinite where a transformer has none.
double site_cost(const SizeProblem& problem, const std::vector<std::optional<Proposal>>& proposals);

} // namespace rillwatt::search
