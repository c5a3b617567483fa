#pragma once

#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/quantity/quantity.hpp"
#include "rillwatt/site/site.hpp"

namespace rillwatt {

/// A limit of the low-voltage side with the place it is written. Rules and sizing both read it here.
template<class T>
struct Limit {
    T value;
    const char* source;
};

namespace limits {

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

} // namespace limits

/// What solving a circuit leaves uncertain, in volts, amperes or ratio: limits are inclusive, so a value
/// within this of its limit keeps it.
inline constexpr double limit_slack = 1e-8;

/// Whether a value is truly below a limit, not just by rounding.
template<class T>
constexpr bool below(T value, T limit) {
    return value < limit - T(limit_slack);
}

/// Whether a value is truly above a limit, not just by rounding.
template<class T>
constexpr bool above(T value, T limit) {
    return value > limit + T(limit_slack);
}

} // namespace rillwatt
