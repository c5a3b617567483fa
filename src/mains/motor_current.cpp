#include "rillwatt/mains/motor_current.hpp"

#include <cmath>

namespace rillwatt {

namespace {

MotorRow row(double horsepower, double at_115, double at_200, double at_208, double at_230,
             bool from_memory = false) {
    return {horsepower, Amperes(at_115), Amperes(at_200), Amperes(at_208), Amperes(at_230), from_memory};
}

/// Nameplates write a third or a sixth of a horsepower with two or three decimals.
constexpr double written_horsepower = 0.0005;

bool between(Volts volts, double low, double high) { return volts >= Volts(low) && volts <= Volts(high); }

enum class Column { none, v115, v200, v208, v230 };

Column column_of(Volts volts) {
    if (between(volts, 110, 120)) return Column::v115;
    if (between(volts, 220, 240)) return Column::v230;
    if (volts == Volts(200)) return Column::v200;
    return volts == Volts(208) ? Column::v208 : Column::none;
}

Amperes at(const MotorRow& motor, Column column) {
    if (column == Column::v115) return motor.at_115;
    if (column == Column::v200) return motor.at_200;
    return column == Column::v208 ? motor.at_208 : motor.at_230;
}

} // namespace

const std::vector<MotorRow>& motor_rows() {
    static const std::vector<MotorRow> rows{
        row(1.0 / 6, 4.4, 2.5, 2.4, 2.2), row(0.25, 5.8, 3.3, 3.2, 2.9),  row(1.0 / 3, 7.2, 4.1, 4.0, 3.6),
        row(0.5, 9.8, 5.6, 5.4, 4.9),     row(0.75, 13.8, 7.9, 7.6, 6.9), row(1, 16, 9.2, 8.8, 8.0),
        row(1.5, 20, 11.5, 11.0, 10),     row(2, 24, 13.8, 13.2, 12),     row(3, 34, 19.6, 18.7, 17, true),
        row(5, 56, 32.2, 30.8, 28, true)};
    return rows;
}

std::optional<Amperes> motor_table_amps(double horsepower, Volts nameplate) {
    const Column column = column_of(nameplate);
    if (column == Column::none || horsepower < motor_rows().front().horsepower - written_horsepower)
        return std::nullopt;
    for (const auto& motor : motor_rows())
        if (horsepower <= motor.horsepower + written_horsepower) return at(motor, column);
    return std::nullopt;
}

bool nameplate_fits(Volts nameplate, Volts circuit) {
    if (between(nameplate, 110, 120) || between(circuit, 110, 120))
        return between(nameplate, 110, 120) && between(circuit, 110, 120);
    if (between(nameplate, 220, 240) || between(circuit, 220, 240))
        return between(nameplate, 220, 240) && between(circuit, 220, 240);
    return std::abs(nameplate / circuit - 1) <= 0.05;
}

} // namespace rillwatt
