#pragma once

#include "light_table.hpp"

namespace rillwatt {

/// A regular way to set lights along a walk.
struct Pattern {
    enum class Sides { staggered, one_side, pairs };

    Sides sides = Sides::staggered;
    int first_side = 1;
    double end = 0.5;  ///< from each end of the walk to the nearest light, in spacings
    double back = 0.2; ///< metres off the edge
};

/// All that are tried. Pairs come last: they look like a runway, and are taken only where nothing else does
/// with as few.
std::vector<Pattern> all_patterns();

/// How the lights stand: "staggered"; empty for a single one.
std::string pattern_words(const Pattern& pattern, std::size_t lights);

/// The places of `count` lights, each the nearest free one; a light without such a place is left out.
std::vector<std::size_t> set_out(const LightTable& table, const Pattern& pattern, std::size_t count);

} // namespace rillwatt
