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

/// A figure beside the limit it has to keep: volts, amperes, or a loading as a ratio. The one place where the
/// two are compared. Limits are inclusive.
struct Standing {
    double value = 0;
    double limit = 0;
    bool least = false; ///< the limit is the least that the figure may be; else the most

    /// How far the figure is past its limit; negative while it keeps it.
    constexpr double beyond() const { return least ? limit - value : value - limit; }
    constexpr bool broken() const { return beyond() > limit_slack; }
    /// How much of the limit is used; 0 where there is none.
    constexpr double share() const { return limit > 0 ? value / limit : 0; }
};

} // namespace rillwatt
