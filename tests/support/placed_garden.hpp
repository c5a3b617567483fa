#pragma once

#include <string>

namespace rillwatt::test {

/// A garden drawn to scale, of as many plots as its lights take.
struct PlacedGardenSpec {
    int lights = 25;       ///< on the plan, 25 to a plot
    int pond_corners = 12; ///< of each plot's pond
    bool choices = true;   ///< models, taps and cables written; otherwise left to sizing
    bool typed = false;    ///< every cable's length written; otherwise measured on the plan
    unsigned seed = 1;
};

/// The text of its site file. Each plot, 30 by 24 m, has a house with a terrace, a round pond with falls, a
/// bent walk, a viewpoint on the terrace, and a transformer with two runs: one chain along walk and house,
/// one to a splice at the pond with lights in the water and beside it. Rows of plots lie on paved streets,
/// which a run now and then crosses in a sleeve. The same specification gives the same text everywhere.
std::string placed_garden(const PlacedGardenSpec& spec);

} // namespace rillwatt::test
