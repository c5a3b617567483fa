#pragma once

#include "rillwatt/catalog/catalog.hpp"

#include <optional>

namespace rillwatt::search {

/// One lamp as the search sees it, with its lead.
struct LampLoad {
    LoadModel model = LoadModel::constant_power;
    double power = 0;     ///< S, VA
    double rated = 12;    ///< V
    double low = 0;       ///< least volts at the lamp, margin included
    double high = 0;      ///< most volts at the lamp, margin included
    double lead_ohms = 0; ///< out and back
};

/// Current at a voltage of the lamp itself.
double amps_at_lamp(const LampLoad& lamp, double volts);

/// Current at a voltage where the lead joins the cable, on the stable branch; empty when there is none.
std::optional<double> amps_at_splice(const LampLoad& lamp, double volts);

/// Volts needed where the lead joins the cable for the lamp to get `volts`.
double splice_volts(const LampLoad& lamp, double volts);

/// Whether the current rises with the voltage.
bool rises(const LampLoad& lamp);

} // namespace rillwatt::search
