#pragma once

#include "rillwatt/quantity/point.hpp"
#include "rillwatt/quantity/quantity.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <string>
#include <string_view>

namespace rillwatt {

// How every report, rule and table rounds: one place, so that the same figure reads the same everywhere.

std::string volts_text(Volts volts);           ///< "11.85 V"
std::string amps_text(Amperes amps);           ///< "6.20 A"
std::string watts_text(Watts watts);           ///< "3.2 W"; whole watts from 100
std::string va_text(VoltAmperes va);           ///< "4.2 VA"; whole volt-amperes from 100
std::string percent_text(double ratio);        ///< "61 %" from 0.61; one decimal below ten percent
std::string celsius_text(Celsius temperature); ///< "75 C"
std::string nominal_volts_text(Volts volts);   ///< as written, for taps and supplies: "13 V", "12.5 V"
std::string nominal_amps_text(Amperes amps);   ///< as written, for breakers and limits: "20 A"
std::string lux_text(Lux lux);                 ///< "4.8 lx"; two decimals below 1, none from 100

/// A length that is the most allowed, rounded down to what a tape tells: "580 ft" from 584.5 ft, "95 ft",
/// "7.4 m".
std::string most_length_text(Metres length, LengthUnit unit);

/// How a kind of figure is written.
struct FigureStyle {
    int decimals = 0;
    std::string_view unit;
};

inline constexpr FigureStyle volts_style{2, " V"};
inline constexpr FigureStyle amps_style{2, " A"};

constexpr FigureStyle decimal_length_style(LengthUnit unit) {
    return unit == LengthUnit::feet ? FigureStyle{1, " ft"} : FigureStyle{1, " m"};
}

/// A place on the plan in the site's units: "12.5, 8.0 ft".
std::string plan_point_text(PlanPoint at, LengthUnit unit);

} // namespace rillwatt
