#pragma once

#include "fewer_lights.hpp"
#include "patterns.hpp"
#include <string>

namespace rillwatt {

/// Lights of one table that give a walk what it needs.
struct LampSet {
    std::vector<std::size_t> lamps; ///< in order along the walk
    std::string pattern;            ///< how they stand
    LuxSpread spread;
};

/// The fewest lights of one type for a walk that are found: regular patterns, then a local search that moves
/// lights and takes lights away; few lights are sought exhaustively too. At most `most`.
class WalkSearch {
  public:
    WalkSearch(const LightTable& table, const WalkNeed& need, const std::vector<double>& base,
               std::size_t most);

    /// The best of the regular patterns.
    const std::optional<LampSet>& regular();

    /// Fewer than that by moving, adding and taking away lights.
    const std::optional<LampSet>& fewest();

    /// What is known of how many it takes at least.
    std::size_t lower_bound() const { return bound_; }

  private:
    bool meets(const std::vector<std::size_t>& lamps);
    void keep(std::vector<std::size_t> lamps, std::string pattern);
    void try_pattern(const Pattern& pattern);
    bool grow(const Pattern& pattern, std::size_t& failed);
    void move_patterns();
    bool move_patterns_of(std::size_t count, Effort& effort);
    void fill_and_take_away();
    void bound_from_below();
    void search_exhaustively();

    const LightTable& table_;
    WalkNeed need_;
    const std::vector<double>& base_;
    std::size_t most_; ///< lights that are still worth finding
    std::size_t bound_ = 1;
    LightSum sum_;
    std::optional<LampSet> best_;
};

} // namespace rillwatt
