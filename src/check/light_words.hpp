#pragma once

#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/site/site.hpp"

#include <fmt/format.h>

#include <string>

namespace rillwatt {

/// "4.8 lx"; two decimals below 1.
inline std::string lux_text(Lux lux) { return fixed_text(lux.value(), lux.value() < 1 ? 2 : 1) + " lx"; }

/// A place on the plan in the site's units: "12.5, 8.0 ft".
inline std::string place_words(const Site& site, SpacePoint at) {
    const bool feet = site.settings.units == LengthUnit::feet;
    const double scale = feet ? 1 / metres_per_foot : 1;
    return fmt::format("{}, {} {}", fixed_text(at.x * scale, 1), fixed_text(at.y * scale, 1),
                       feet ? "ft" : "m");
}

} // namespace rillwatt
