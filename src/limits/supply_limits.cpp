#include "rillwatt/limits/supply_limits.hpp"

#include "rillwatt/mains/motor_current.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt {

namespace {

constexpr double service_tolerance = 0.05;

/// Distances on the plan are uncertain by rounding only: a point drawn at a limit keeps it.
constexpr Metres plan_slack{1e-6};

} // namespace

bool supply_fits(Volts supply, Volts primary) {
    return nameplate_fits(primary, supply) || !above(std::abs(supply / primary - 1), service_tolerance);
}

Volts contact_volts(const TransformerCircuit& circuit, Volts tap) {
    return circuit.type == nullptr ? tap : tap * (circuit.supply / circuit.type->primary_volts);
}

Volts contact_limit(const SiteSettings& settings) { return code_limits::wet_contact_limit(settings).value; }

Standing against_contact_limit(const SiteSettings& settings, Volts volts) {
    return {volts.value(), contact_limit(settings).value(), false};
}

std::optional<Metres> too_near_water(const AreaIndex& areas, const SiteSettings& settings,
                                     const std::optional<PlanPoint>& at) {
    if (!at || settings.code == CodeFamily::iec) return std::nullopt;
    const auto away = areas.distance_to_water(*at);
    return away && *away < code_limits::low_voltage_to_water.value - plan_slack ? away : std::nullopt;
}

bool needs_water_supply(const AreaIndex& areas, const Site& site, const CircuitNode& node) {
    if (node.kind != NodeKind::fixture) return false;
    return node.in_water || too_near_water(areas, site.settings, site.fixtures[node.part].at).has_value();
}

bool needs_water_listing(const AreaIndex& areas, const Site& site, const TransformerCircuit& circuit) {
    if (too_near_water(areas, site.settings, site.transformers[circuit.transformer].at)) return true;
    return std::any_of(circuit.nodes.begin(), circuit.nodes.end(),
                       [&](const CircuitNode& node) { return needs_water_supply(areas, site, node); });
}

} // namespace rillwatt
