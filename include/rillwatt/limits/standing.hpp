#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/limits/limits.hpp"
#include "rillwatt/quantity/quantity.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt {

/// What a plan keeps beyond the limits themselves.
struct Margins {
    Volts low{0};                                      ///< every lamp from the low end of its window
    Volts high{0};                                     ///< and from its high end
    double loading = limits::transformer_margin.value; ///< most a transformer is loaded, ratio
};

/// A figure against the most that it may be.
template<Dimension D>
constexpr Standing at_most(Quantity<D> value, Quantity<D> limit) {
    return {value.value(), limit.value(), false};
}

/// A lamp's volts against the low end of its window.
constexpr Standing against_low_end(const FixtureType& type, Volts volts, const Margins& margins = {}) {
    return {volts.value(), (type.window_low + margins.low).value(), true};
}

/// A lamp's volts against the high end of its window.
constexpr Standing against_high_end(const FixtureType& type, Volts volts, const Margins& margins = {}) {
    return {volts.value(), (type.window_high - margins.high).value(), false};
}

/// The magnitude of a current through a cable against its ampacity.
inline Standing against_ampacity(const CableType& type, Amperes amps) {
    return {std::abs(amps.value()), type.ampacity.value(), false};
}

/// The magnitude of a run's current against what one output of its transformer gives. Runs on different taps
/// that are joined may drive one of them backwards; that current is as real.
inline Standing against_output(const TransformerType& type, Amperes amps) {
    return {std::abs(amps.value()), type.secondary_limit.value(), false};
}

/// A transformer's load against the share of its rating that it may carry.
constexpr Standing against_loading(double loading, const Margins& margins = {}) {
    return {loading, margins.loading, false};
}

/// A transformer's load against its nameplate.
constexpr Standing against_rating(double loading) {
    return {loading, limits::transformer_rating.value, false};
}

/// Where a lamp's volts are in its window.
enum class WindowPlace { below, inside, above };

constexpr WindowPlace place_in_window(const FixtureType& type, Volts volts) {
    if (against_low_end(type, volts).broken()) return WindowPlace::below;
    return against_high_end(type, volts).broken() ? WindowPlace::above : WindowPlace::inside;
}

/// Volts to the nearer end of a lamp's window; negative outside it.
constexpr Volts room_in_window(const FixtureType& type, Volts volts) {
    return Volts(-std::max(against_low_end(type, volts).beyond(), against_high_end(type, volts).beyond()));
}

/// What a choice may not go beyond, as the plain numbers that a search compares with: the slack that every
/// limit has is in them.
struct VoltRange {
    double low = 0;
    double high = 0;
};

/// Volts at a lamp within which it keeps its window and the margins.
constexpr VoltRange lamp_range(const FixtureType& type, const Margins& margins) {
    return {(type.window_low + margins.low).value() - limit_slack,
            (type.window_high - margins.high).value() + limit_slack};
}

/// Most amperes through a cable.
constexpr double most_amps(const CableType& type) { return type.ampacity.value() + limit_slack; }

/// Most amperes from one output of a transformer.
constexpr double most_amps(const TransformerType& type) { return type.secondary_limit.value() + limit_slack; }

/// Most volt-amperes from a transformer that is loaded to at most `loading` of its rating.
constexpr double most_va(const TransformerType& type, double loading) {
    return (loading + limit_slack) * type.va.value();
}

} // namespace rillwatt
