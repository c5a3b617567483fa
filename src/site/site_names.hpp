#pragma once

#include <string_view>

namespace rillwatt {

// The words of the file, each list in the order of its enumeration.

inline constexpr std::string_view length_unit_names[] = {"ft", "m"};
inline constexpr std::string_view code_family_names[] = {"nec", "iec"};
inline constexpr std::string_view wiring_names[] = {"direct-burial", "rigid-metal", "pvc", "indoor"};
inline constexpr std::string_view crossing_names[] = {"lawn", "slab", "driveway"};
inline constexpr std::string_view outlet_names[] = {"receptacle", "hardwired"};
inline constexpr std::string_view area_kind_names[] = {"water", "building", "paving", "bed", "lawn"};
inline constexpr std::string_view side_names[] = {"left", "right"};

/// EN 13201-2 classes for pedestrian ways.
inline constexpr std::string_view walk_class_names[] = {"P1", "P2", "P3", "P4", "P5", "P6", "P7"};

} // namespace rillwatt
