#include "rillwatt/circuit/lamp_load.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

constexpr int filament_steps = 60;

std::optional<double> constant_power_amps(const LampLoad& lamp, double volts) {
    const double inside = volts * volts - 4 * lamp.lead_ohms * lamp.power;
    if (inside < 0) return std::nullopt;
    return 2 * lamp.power / (volts + std::sqrt(inside));
}

/// Newton's method on the lamp's volts, from above: the lead's drop is concave in them.
double filament_amps_behind_lead(const LampLoad& lamp, double volts) {
    double at_lamp = volts;
    for (int step = 0; step < filament_steps; ++step) {
        const double miss = at_lamp + lamp.lead_ohms * amps_at_lamp(lamp, at_lamp) - volts;
        const double slope = 1 + lamp.lead_ohms * amps_per_volt(lamp, at_lamp);
        const double next = std::max(at_lamp - miss / slope, at_lamp / 8);
        if (std::abs(next - at_lamp) < 1e-13 * volts) return amps_at_lamp(lamp, next);
        at_lamp = next;
    }
    return amps_at_lamp(lamp, at_lamp);
}

} // namespace

LampLoad lamp_load(const FixtureType& type, double lead_ohms) {
    return {type.load, type.va.value(), type.rated_volts.value(), lead_ohms};
}

LoadColumns load_columns(const LampLoad& lamp) {
    switch (lamp.model) {
    case LoadModel::constant_power:
        return {.power = lamp.power};
    case LoadModel::constant_current:
        return {.current = lamp.power / lamp.rated};
    case LoadModel::filament:
        return {.filament = lamp.power / lamp.rated};
    case LoadModel::resistance:
        return {.conductance = lamp.power / (lamp.rated * lamp.rated)};
    }
    return {};
}

double amps_at_lamp(const LampLoad& lamp, double volts) {
    switch (lamp.model) {
    case LoadModel::constant_power:
        return lamp.power / volts;
    case LoadModel::constant_current:
        return lamp.power / lamp.rated;
    case LoadModel::filament:
        return filament_amps(lamp.power / lamp.rated, lamp.rated, volts);
    case LoadModel::resistance:
        return lamp.power * volts / (lamp.rated * lamp.rated);
    }
    return 0;
}

double amps_per_volt(const LampLoad& lamp, double volts) {
    switch (lamp.model) {
    case LoadModel::constant_power:
        return -lamp.power / (volts * volts);
    case LoadModel::constant_current:
        return 0;
    case LoadModel::filament:
        return filament_exponent * amps_at_lamp(lamp, volts) / volts;
    case LoadModel::resistance:
        return lamp.power / (lamp.rated * lamp.rated);
    }
    return 0;
}

std::optional<double> amps_at_splice(const LampLoad& lamp, double volts) {
    if (volts <= 0) return std::nullopt;
    if (lamp.power <= 0) return 0.0;
    switch (lamp.model) {
    case LoadModel::constant_power:
        return constant_power_amps(lamp, volts);
    case LoadModel::constant_current: {
        const double amps = amps_at_lamp(lamp, volts);
        return volts > lamp.lead_ohms * amps ? std::optional(amps) : std::nullopt;
    }
    case LoadModel::filament:
        return filament_amps_behind_lead(lamp, volts);
    case LoadModel::resistance:
        return volts / (lamp.lead_ohms + lamp.rated * lamp.rated / lamp.power);
    }
    return std::nullopt;
}

double splice_volts(const LampLoad& lamp, double volts) {
    // Below this a constant-power lamp is on the lower root behind its lead.
    if (lamp.model == LoadModel::constant_power)
        volts = std::max(volts, std::sqrt(lamp.lead_ohms * lamp.power));
    return volts + lamp.lead_ohms * amps_at_lamp(lamp, volts);
}

bool rises(const LampLoad& lamp) {
    return lamp.power > 0 && (lamp.model == LoadModel::filament || lamp.model == LoadModel::resistance);
}

} // namespace rillwatt
