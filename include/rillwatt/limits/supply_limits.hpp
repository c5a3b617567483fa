#pragma once

#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/layout/places.hpp"
#include "rillwatt/limits/standing.hpp"
#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/quantity/quantity.hpp"
#include "rillwatt/site/site.hpp"

#include <optional>

/// What a transformer and a tap have to suit whatever hangs on them: the circuit that feeds them and the
/// water. Rules and sizing ask the same functions, so that nothing is chosen that `check` finds fault with.
namespace rillwatt {

/// Whether a transformer may hang on a supply: 110 to 120 V belong together, 220 to 240 V belong together,
/// otherwise within 5 %, which is how far a service may be from its nominal volts (common practice).
/// NFPA 70, 110.3(B) and 110.4.
bool supply_fits(Volts supply, Volts primary);

/// Highest volts a tap shows: `tap * supply / primary`, without load. A transformer whose model is open
/// counts as one made for its supply.
Volts contact_volts(const TransformerCircuit& circuit, Volts tap);

/// The contact limit of the code that the site goes by, for volts that may be touched with wet skin.
Volts contact_limit(const SiteSettings& settings);

/// Volts where people may touch with wet skin against the contact limit of the code that the site goes by.
Standing against_contact_limit(const SiteSettings& settings, Volts volts);

/// Distance of a light or a transformer to the water where that is nearer than the code lets low-voltage
/// lighting be without a supply for it; empty where it is not, where nobody knows, and where the site does
/// not go by the US code.
std::optional<Metres> too_near_water(const AreaIndex& areas, const SiteSettings& settings,
                                     const std::optional<PlanPoint>& at);

/// Whether a light stands in water or too near to it: it needs a water-listed transformer and a tap within
/// the contact limit.
bool needs_water_supply(const AreaIndex& areas, const Site& site, const CircuitNode& node);

/// Whether a transformer has to be listed for water, for one of its lights or for the place where it hangs.
bool needs_water_listing(const AreaIndex& areas, const Site& site, const TransformerCircuit& circuit);

} // namespace rillwatt
