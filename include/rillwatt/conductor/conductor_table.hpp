#pragma once

#include "rillwatt/quantity/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// Temperatures of a conductor that anything here is computed for.
inline constexpr Celsius coldest_conductor{-50};
inline constexpr Celsius hottest_conductor{200};

/// One line of a conductor table.
struct ConductorRow {
    std::string size;        ///< as the trade writes it: "12 AWG", "1/0 AWG", "4 mm2"
    OhmsPerMetre resistance; ///< of ONE conductor, at the table's reference temperature
};

/// Resistance of conductors by size, as a published table gives it.
struct ConductorTable {
    std::string id;
    std::string source; ///< document, edition, table
    Celsius reference_temperature;
    double temperature_coefficient = 0; ///< per kelvin, at the reference temperature
    std::vector<ConductorRow> rows;

    const ConductorRow* find(std::string_view size) const;
};

/// Resistance at a temperature: `r_ref * (1 + alpha * (T - T_ref))`, NEC chapter 9 Table 8 note 2 and, with
/// the coefficient at 20 C, IEC 60228 annex.
OhmsPerMetre resistance_at(const ConductorTable& table, const ConductorRow& row, Celsius temperature);

/// Resistance of a two-conductor cable, out and back: twice the length.
Ohms loop_resistance(OhmsPerMetre one_conductor, Metres length);

/// Cross-section in mm2 of a size in AWG ("18 AWG".."4/0 AWG", ASTM B258: d = 0.005 in * 92^((36-n)/39)) or
/// mm2
/// ("2.5 mm2"); empty when the text is no size.
std::optional<double> section_mm2(std::string_view size);

} // namespace rillwatt
