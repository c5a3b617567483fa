#include "rillwatt/quantity/figure_text.hpp"

#include "rillwatt/quantity/quantity_text.hpp"

#include <cmath>

namespace rillwatt {

namespace {

std::string power_number(double value) { return fixed_text(value, std::abs(value) < 99.95 ? 1 : 0); }

std::string styled(double value, FigureStyle style) {
    std::string text = fixed_text(value, style.decimals);
    text += style.unit;
    return text;
}

} // namespace

std::string volts_text(Volts volts) { return styled(volts.value(), volts_style); }

std::string amps_text(Amperes amps) { return styled(amps.value(), amps_style); }

std::string watts_text(Watts watts) { return power_number(watts.value()) + " W"; }

std::string va_text(VoltAmperes va) { return power_number(va.value()) + " VA"; }

std::string percent_text(double ratio) {
    const double percent = 100 * ratio;
    return fixed_text(percent, std::abs(percent) < 9.95 ? 1 : 0) + " %";
}

std::string celsius_text(Celsius temperature) { return trimmed_text(temperature.value(), 1) + " C"; }

std::string nominal_volts_text(Volts volts) { return trimmed_text(volts.value(), 2) + " V"; }

std::string nominal_amps_text(Amperes amps) { return trimmed_text(amps.value(), 2) + " A"; }

std::string lux_text(Lux lux) {
    const double value = lux.value();
    return fixed_text(value, value < 0.995 ? 2 : value < 99.95 ? 1 : 0) + " lx";
}

std::string most_length_text(Metres length, LengthUnit unit) {
    const bool feet_asked = unit == LengthUnit::feet;
    const double number = length.value() / (feet_asked ? metres_per_foot : 1);
    const double step = number < 10 ? 0.1 : number < 100 ? 1 : number < 500 ? 5 : 10;
    return trimmed_text(std::floor(number / step + 1e-9) * step, 1) + (feet_asked ? " ft" : " m");
}

std::string plan_point_text(PlanPoint at, LengthUnit unit) {
    const double scale = unit == LengthUnit::feet ? 1 / metres_per_foot : 1;
    return fixed_text(at.x * scale, 1) + ", " + fixed_text(at.y * scale, 1) +
           (unit == LengthUnit::feet ? " ft" : " m");
}

} // namespace rillwatt
