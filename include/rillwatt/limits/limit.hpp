#pragma once

namespace rillwatt {

/// A limit with the place it is written.
template<class T>
struct Limit {
    T value;
    const char* source;
};

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
