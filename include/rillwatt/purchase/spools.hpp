#pragma once

#include "rillwatt/quantity/quantity.hpp"

#include <cstddef>
#include <vector>

namespace rillwatt {

/// A set of spools to buy of one cable.
struct SpoolPurchase {
    std::vector<Metres> spools; ///< one entry for each spool, longest first
    Metres total;               ///< their summed length
};

/// The cheapest set of spools that covers a length: whole spools, any number of each. Spools of one cable
/// cost by their length, so cheapest is shortest in total. Exact: lengths are counted in tenths of a
/// millimetre. A length of 0 needs no spool.
SpoolPurchase cheapest_spools(const std::vector<Metres>& sold, Metres needed);

/// What must be bought when `needed` metres of a cable are laid: `needed` itself for a cable sold by length.
Metres purchased_length(const std::vector<Metres>& sold, Metres needed);

/// One spool with the pieces cut from it.
struct CutSpool {
    Metres spool;                    ///< its length as sold; for a cable sold by length, of the piece itself
    std::vector<std::size_t> pieces; ///< indices into the pieces asked for, longest first
    Metres rest;
};

/// How the pieces of one cable are cut from spools.
struct CutList {
    std::vector<CutSpool> spools;
    Metres bought;
    Metres waste;
    bool proven = true;                ///< no shorter purchase packs these pieces
    std::vector<std::size_t> too_long; ///< pieces longer than the longest spool: they need a joint
};

/// Packs pieces into spools so that the least length is bought. A branch and bound over first-fit-decreasing
/// packings, cut off after `effort` steps; then `proven` is false and the list is the best one found. Pieces
/// longer than every spool are listed and left out.
CutList pack_cut_list(const std::vector<Metres>& sold, const std::vector<Metres>& pieces,
                      std::size_t effort = 200000);

} // namespace rillwatt
