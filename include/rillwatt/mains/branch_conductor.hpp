#pragma once

#include "rillwatt/mains/limit_source.hpp"
#include "rillwatt/quantity/quantity.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace rillwatt {

enum class TemperatureColumn { c60, c75, c90 };

/// One copper size of a line-voltage branch circuit with what the code tables say of it.
struct BranchConductor {
    std::string_view size;              ///< "12 AWG"
    Amperes ampacity_60;                ///< Table 310.16, 60 C column; 0: no figure in that column
    Amperes ampacity_75;                ///< 75 C column
    Amperes ampacity_90;                ///< 90 C column
    std::optional<Amperes> breaker_max; ///< 240.4(D); empty above 10 AWG
    double circular_mils = 0;           ///< chapter 9 Table 8
    OhmsPerMetre resistance;            ///< chapter 9 Table 9, one conductor in PVC conduit, 75 C, AC
    OhmsPerMetre reactance;             ///< chapter 9 Table 9, PVC or aluminium conduit
    OhmsPerMetre reactance_steel;       ///< chapter 9 Table 9, steel conduit
    bool ampacity_from_memory = false;  ///< the row of Table 310.16 was remembered
};

inline constexpr LimitSource ampacity_source{"Table 310.15(B)(16), 60 C column by 110.14(C) and 340.80",
                                             "Table 310.16, 60 C column by 110.14(C) and 340.80",
                                             "Table 310.16, 60 C column by 110.14(C) and 340.80"};
inline constexpr LimitSource small_conductor_source{"240.4(D)", "240.4(D)", "240.4(D)"};
inline constexpr LimitSource next_breaker_source{"240.4(B)", "240.4(B)", "240.4(B)"};
inline constexpr LimitSource branch_impedance_source{"chapter 9 Table 9", "chapter 9 Table 9",
                                                     "chapter 9 Table 9", false, "IEC 60228 class 2 at 70 C"};

/// Copper for branch circuits, thinnest first: 14 to 4 AWG.
const std::vector<BranchConductor>& branch_conductors();

/// The row of that size ("12 AWG", also "12" and "12awg"); null when it is none of them.
const BranchConductor* find_branch_conductor(std::string_view size);

/// Ampacity in a column of Table 310.16 for any size it lists, 18 AWG to 4 AWG; empty: no figure.
std::optional<Amperes> table_ampacity(std::string_view size, TemperatureColumn column);

/// What a branch circuit's wire is worth here: the 60 C column (110.14(C), 340.80).
Amperes usable_ampacity(const BranchConductor& conductor);

/// Resistance and reactance of one conductor of a branch circuit.
struct BranchImpedance {
    OhmsPerMetre resistance;
    OhmsPerMetre reactance;
};

/// By chapter 9 Table 9 for AWG sizes; for sizes in mm2 IEC 60228 class 2 at 70 C without reactance (BS 7671
/// Table 4D1B counts none up to 16 mm2). Empty: the size is in neither table.
std::optional<BranchImpedance> branch_impedance(std::string_view size);

/// Drop in a two-wire branch circuit of one-way length `length` for a current at a power factor (lagging):
/// `2 L I (R cos phi + X sin phi)`, chapter 9 Table 9 note 2.
Volts branch_drop(const BranchImpedance& impedance, Metres length, Amperes amps, double power_factor);

} // namespace rillwatt
