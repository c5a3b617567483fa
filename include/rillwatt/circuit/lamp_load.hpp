#pragma once

#include "rillwatt/catalog/catalog.hpp"

#include <cmath>
#include <optional>

namespace rillwatt {

/// A filament's current goes with this power of its volts (Fink and Beaty, Standard Handbook for Electrical
/// Engineers, 11th edition, 1978, page 22-8).
inline constexpr double filament_exponent = 0.55;

/// What a lamp draws, and the lead through which it draws it. The model of a lamp for everything that
/// computes circuits: the solver takes it apart into its columns, the search for cables follows it from the
/// lamp towards the transformer. Plain numbers, for inner loops: volts, amperes, ohms, volt-amperes; not
/// negative.
///
/// Current at V volts of the lamp, S its volt-amperes:
///
///     constant-power    S / V
///     constant-current  S / rated
///     filament          S / rated * (V / rated) ^ 0.55
///     resistance        S * V / rated^2
struct LampLoad {
    LoadModel model = LoadModel::constant_power;
    double power = 0;     ///< S, VA
    double rated = 12;    ///< V
    double lead_ohms = 0; ///< out and back
};

/// The load of a fixture of a type behind a lead of so many ohms.
LampLoad lamp_load(const FixtureType& type, double lead_ohms);

/// The same current as `power / V + current + conductance * V + filament * (V / rated) ^ 0.55`; three of the
/// four are 0. Columns of the solver, which adds them without asking for the model.
struct LoadColumns {
    double power = 0;       ///< VA
    double current = 0;     ///< A
    double conductance = 0; ///< S
    double filament = 0;    ///< A at rated volts
};

LoadColumns load_columns(const LampLoad& lamp);

/// What a filament draws at some volts, given its amperes at rated volts.
inline double filament_amps(double amps_at_rated, double rated, double volts) {
    return amps_at_rated * std::pow(volts / rated, filament_exponent);
}

/// Current at a voltage of the lamp itself, which is above 0.
double amps_at_lamp(const LampLoad& lamp, double volts);

/// Its derivative by those volts; negative for a constant-power lamp.
double amps_per_volt(const LampLoad& lamp, double volts);

/// Current at a voltage where the lead joins the cable, on the stable branch; empty when there is none.
std::optional<double> amps_at_splice(const LampLoad& lamp, double volts);

/// Volts needed where the lead joins the cable for the lamp to get `volts`.
double splice_volts(const LampLoad& lamp, double volts);

/// Whether the current rises with the voltage.
bool rises(const LampLoad& lamp);

} // namespace rillwatt
