#pragma once

#include "rillwatt/mains/limit_source.hpp"
#include "rillwatt/quantity/quantity.hpp"

#include <optional>
#include <vector>

namespace rillwatt {

/// One row of Table 430.248: full-load amperes of single-phase AC motors.
struct MotorRow {
    double horsepower = 0;
    Amperes at_115;
    Amperes at_200;
    Amperes at_208;
    Amperes at_230;
    bool from_memory = false;
};

inline constexpr LimitSource motor_current_source{"Table 430.248, 430.6(A)(1)", "Table 430.248, 430.6(A)(1)",
                                                  "Table 430.248, 430.6(A)(1)"};

const std::vector<MotorRow>& motor_rows();

/// Full-load current by the table: the next horsepower row up, the column of the nameplate volts (115 for 110
/// to 120 V, 230 for 220 to 240 V). Empty below the first row, above the last, and for other volts.
std::optional<Amperes> motor_table_amps(double horsepower, Volts nameplate);

/// Whether a nameplate belongs on a circuit: 110 to 120 V together, 220 to 240 V together, else within 5 %.
bool nameplate_fits(Volts nameplate, Volts circuit);

} // namespace rillwatt
