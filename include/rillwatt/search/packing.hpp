#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

/// Cutting stock with spools of several lengths that cost by their length.
///
/// Pieces of one cable are cut from whole spools, never joined; the spools bought are to have the least total
/// length. That is the variable-sized bin packing problem (Friesen, Langston, SIAM J. Comput. 15 (1986)
/// 222-230; Kang, Park, EJOR 147 (2003) 365-372), NP-hard and small in gardens. `pack` meets a good packing
/// and a lower bound from both sides:
///
/// - From above: first fit decreasing with new spools of each length, each spool then exchanged for the
///   shortest that holds what was cut from it (Kang and Park), and the columns of the linear programme
///   rounded down with the rest packed anew.
/// - From below: the pieces' total, raised to a total that whole spools can have; Martello and Toth's L2
/// where
///   there is one length (Discrete Appl. Math. 28 (1990) 59-70); the linear programme over all cutting
///   patterns of Gilmore and Gomory (Oper. Res. 9 (1961) 849-859), solved by column generation, its duals
///   scaled until no pattern is worth more than its spool (Farley, Oper. Res. 38 (1990) 922-923) and checked
///   in whole numbers.
/// - Between: every set of spools whose total lies between the two, by ascending total, is tried by
///   depth-first search with the longest pieces first. It drops what only exchanges like spools or like
///   pieces, and what leaves more waste than the set has to spare.
///
/// All lengths are whole micrometres, so that nothing hangs on rounding.
namespace rillwatt::search {

/// Micrometres.
using Length = std::int64_t;

/// To the nearest micrometre, at least one: feet and inches are whole ones.
Length whole_length(double metres);

/// In metres.
double metres_of(Length length);

/// One spool with the pieces cut from it.
struct PackedSpool {
    Length length = 0;
    std::vector<std::size_t> pieces; ///< indices into the pieces asked for, longest first
};

struct Packing {
    std::vector<PackedSpool> spools;
    Length bought = 0;
    Length bound = 0; ///< no spools that are shorter in total will do

    bool proven() const { return bound >= bought; }
};

/// Steps that `pack` may take when no others are asked for: small gardens need a few thousand.
inline constexpr std::size_t packing_effort = 200'000;

/// The shortest set of spools found from which all pieces can be cut, with the cuts. Every piece must fit the
/// longest spool. Exact while the effort (steps of the depth-first search) lasts, then `proven()` is false.
Packing pack(const std::vector<Length>& sold, const std::vector<Length>& pieces,
             std::size_t effort = packing_effort);

} // namespace rillwatt::search
