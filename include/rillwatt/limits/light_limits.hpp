#pragma once

#include "rillwatt/limits/limit.hpp"

namespace rillwatt::limits {

/// Least share of the mean that the darkest spot of a walk must have.
inline constexpr Limit<double> walk_uniformity{
    0.2, "EN 13201-2:2015 table 3: minimum over mean that the P classes imply"};

inline constexpr const char* walk_class_source = "EN 13201-2:2015 table 3, P classes";

/// Share of a falls face that has to be lit before the falls count as lit.
inline constexpr Limit<double> falls_lit_share{
    0.5, "common practice, no source: at least half of the face at 20 lx or more"};

/// Share of a light's lumens that may go to the sky unused.
inline constexpr Limit<double> wasted_uplight{
    0.15,
    "EN 12193, upward light ratio 15 % in a suburban zone (E3); five principles for responsible outdoor "
    "lighting (2020): targeted"};

/// Lumens above level that nobody minds.
inline constexpr Limit<double> harmless_uplight_lumens{10, "IES TM-15, uplight rating U1: at most 10 lm"};

/// Warmest-allowed colour temperature, kelvins.
inline constexpr Limit<double> warm_colour{
    3000,
    "five principles for responsible outdoor lighting (2020): warm colour; local dark-sky rules put it at "
    "3000 K or less"};

inline constexpr const char* glare_source =
    "common practice, no source: no eye within a light's field angle and 20 m";

} // namespace rillwatt::limits

namespace rillwatt {

/// The darkest spot of a walk over its mean against the least that it may be.
constexpr Standing against_uniformity(double uniformity) {
    return {uniformity, limits::walk_uniformity.value, true};
}

/// The share of a falls face that is lit against the least that counts as lit.
constexpr Standing against_lit_share(double share) { return {share, limits::falls_lit_share.value, true}; }

} // namespace rillwatt
