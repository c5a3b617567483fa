#pragma once

#include "rillwatt/search/packing.hpp"

/// Lower bounds on the length of spools that pieces can be cut from (packing.hpp).
namespace rillwatt::search {

/// Which total lengths whole spools can have.
class SpoolTotals {
  public:
    /// Totals up to `longest`, which must be given large enough for all that is asked later.
    SpoolTotals(const std::vector<Length>& sold, Length longest);

    /// Least total of whole spools that is `length` or more; `length` itself where lengths are so odd that
    /// the totals were not tabulated.
    Length covering(Length length) const;

    bool tabulated() const { return !next_.empty(); }

  private:
    Length unit_ = 1;          ///< every spool is a multiple of it
    std::vector<Length> next_; ///< for each multiple of the unit the least total at or above it, in units
};

/// Martello and Toth's bound on the number of spools of one length.
std::int64_t l2_bound(Length spool, const std::vector<Length>& pieces);

/// A cutting pattern of the linear programme.
struct Pattern {
    Length spool = 0;
    std::vector<std::int64_t> times; ///< of each distinct length
    double used = 0;                 ///< how often the linear programme cuts it
};

/// The linear programme over all cutting patterns.
struct PatternProgram {
    std::vector<Length> lengths; ///< distinct, longest first
    std::vector<Pattern> patterns;
    Length bound = 0; ///< on the length of spools; 0 when nothing is known
};

/// Solves the linear programme by column generation. Every piece must fit the longest spool.
PatternProgram solve_patterns(const std::vector<Length>& sold, const std::vector<Length>& pieces);

} // namespace rillwatt::search
