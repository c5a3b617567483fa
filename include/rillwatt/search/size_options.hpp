#pragma once

#include "rillwatt/limits/standing.hpp"
#include "rillwatt/quantity/quantity.hpp"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace rillwatt {

/// How a site is to be sized.
struct SizeOptions {
    bool per_length =
        false; ///< each length has its own cable, never thicker than the chosen one that feeds it
    bool any_order = false;     ///< with per_length: thicker downstream is allowed
    bool all = false;           ///< typed cables, taps and models are reopened
    Volts margin{0};            ///< distance every lamp keeps from both ends of its window
    bool weak_supply = false;   ///< every lamp keeps the low end of its window on a weak supply too
    bool strong_supply = false; ///< open taps keep window and contact limit on a strong supply if any can
    double loading = limits::transformer_margin.value; ///< of a transformer, ratio
    std::size_t effort = 0;            ///< labels and combinations to examine; 0: by the size of the site
    std::function<bool()> out_of_time; ///< asked now and then; empty: no limit

    /// Kept from the low end of every window, at nominal supply.
    Volts above_low_end() const { return margin; }

    /// What lamps and transformers keep beyond their limits, at nominal supply.
    Margins margins() const { return {above_low_end(), margin, loading}; }
};

} // namespace rillwatt
