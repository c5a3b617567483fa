#pragma once

#include <string_view>

namespace rillwatt {

// The words of the file, each list in the order of its enumeration.

inline constexpr std::string_view fixture_kind_names[] = {"submersible", "path", "accent",
                                                          "downlight",   "step", "other"};
inline constexpr std::string_view load_model_names[] = {"constant-power", "constant-current", "filament",
                                                        "resistance"};
inline constexpr std::string_view water_rating_names[] = {"submersible", "wet", "damp"};
inline constexpr std::string_view resistance_unit_names[] = {"ohm/kft", "ohm/km"};
inline constexpr std::string_view distribution_model_names[] = {"beam", "hat", "batwing"};

} // namespace rillwatt
