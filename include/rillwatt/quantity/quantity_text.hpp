#pragma once

#include "rillwatt/quantity/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace rillwatt {

/// What a bare length means in a site file, and what reports print.
enum class LengthUnit { feet, metres };

/// Reads a length with its unit: "35 ft", "12 ft 6 in", "12' 6\"", "12'6 1/2\"", "18 in", "4.5 m", "450 mm",
/// "60 cm". Signs are read ("-4 in"). Empty when the text is none of these or the number is not finite.
std::optional<Metres> parse_length(std::string_view text);

/// Reads a temperature with its scale: "75 C", "68 F". Empty when the text is neither.
std::optional<Celsius> parse_temperature(std::string_view text);

/// A length as people write it in the given unit: "12 ft 6 in" (to the nearest inch) or "3.81 m".
std::string length_text(Metres length, LengthUnit unit);

/// A length as one decimal number with its unit: "12.5 ft" or "3.81 m"; fits a table column.
std::string decimal_length_text(Metres length, LengthUnit unit, int decimals = 1);

/// A depth or another short length: "18 in", "4.5 in" or "0.46 m".
std::string depth_text(Metres length, LengthUnit unit);

/// A number with a fixed number of decimals, never "-0.0", never in a locale.
std::string fixed_text(double value, int decimals);

/// A number with as many decimals as it needs, up to `decimals`: 12, 12.5, 12.25.
std::string trimmed_text(double value, int decimals);

/// Money with two decimals and its currency: "512.40 USD".
std::string money_text(Money amount, std::string_view currency);

} // namespace rillwatt
