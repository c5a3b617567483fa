#pragma once

#include "rillwatt/mains/limit_source.hpp"
#include "rillwatt/quantity/quantity.hpp"
#include "rillwatt/site/site.hpp"

#include <optional>

namespace rillwatt {

/// Rows of Table 300.5.
enum class BurialPlace {
    not_listed_below,
    under_two_inch_concrete,
    under_building,
    under_slab,         ///< 4 in exterior slab or thicker, no vehicles
    street_or_driveway, ///< streets, roads, alleys, driveways, parking
    home_driveway,      ///< driveways and parking of one- and two-family dwellings
};

/// Columns of Table 300.5. The fourth and fifth have two figures under a slab, so each comes twice.
enum class BurialMethod {
    direct,              ///< column 1
    rigid_metal,         ///< column 2
    nonmetallic,         ///< column 3: PVC and the like; 2023 also EMT
    home_gfci_direct,    ///< column 4: residential, 120 V, 20 A or less, GFCI
    home_gfci_raceway,   ///< column 4 in a raceway
    low_voltage_direct,  ///< column 5: irrigation and landscape lighting, 30 V or less
    low_voltage_raceway, ///< column 5 in a raceway
};

inline constexpr LimitSource burial_source{"Table 300.5", "Table 300.5", "Table 300.5(A)"};

/// Largest circuit of column 4.
inline constexpr Volts home_gfci_volts{120};
inline constexpr Amperes home_gfci_amps{20};

/// Minimum cover by Table 300.5; where columns 1 to 3 say 0 under a building the cable must be in a raceway.
Metres minimum_cover(BurialPlace place, BurialMethod method);

/// The row a circuit's crossing means on a site.
BurialPlace burial_place(Crossing crossing, bool dwelling);

/// What a circuit's own wiring needs, and what it needs where column 4 may be read instead (note 4).
struct CoverNeeded {
    Metres by_wiring;
    std::optional<Metres> as_home_gfci; ///< set where the wiring could be a column 4 circuit
};

/// Empty for wiring that is not buried.
std::optional<CoverNeeded> cover_needed(Wiring wiring, Crossing crossing, bool dwelling);

} // namespace rillwatt
