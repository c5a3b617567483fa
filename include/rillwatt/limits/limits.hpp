#pragma once

#include "rillwatt/limits/limit.hpp"

/// The limits of the low-voltage side with their sources. Those of the line-voltage side and of the code
/// stand in `mains/code_limits.hpp`.
namespace rillwatt::limits {

/// Loading above which a transformer has no room left for what comes next year.
inline constexpr Limit<double> transformer_margin{
    0.80, "common practice, no source: load a transformer to at most 80 %"};

/// Loading a transformer's nameplate carries.
inline constexpr Limit<double> transformer_rating{1.0, "transformer nameplate, from catalog"};

inline constexpr const char* ampacity_source = "cable ampacity, from catalog";
inline constexpr const char* secondary_source =
    "NFPA 70 (2020) 411.3: each output of the supply at most 25 A, or less by its nameplate, from catalog";
inline constexpr const char* window_source = "window of the fixture, from catalog";
inline constexpr const char* burial_source =
    "NFPA 70 (2020) 411.4(A) and Table 300.5 column 5: cable identified for direct burial";

} // namespace rillwatt::limits
