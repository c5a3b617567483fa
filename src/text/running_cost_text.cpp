#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "check_sections.hpp"

namespace rillwatt {

namespace {

std::string cost_text(const SiteSettings& settings, Money cost) {
    return settings.energy_price > 0 ? ", " + money_text(cost, settings.currency) : "";
}

std::string year_text(const SiteSettings& settings, WattHours energy, Money cost) {
    return fmt::format("{} kWh a year{}", fixed_text(kilowatt_hours(energy), 0), cost_text(settings, cost));
}

} // namespace

std::string running_cost_text(const Assessment& assessment, const TextStyle& style) {
    const RunningCost& cost = assessment.mains.cost;
    const Site& site = *assessment.site;
    const SiteSettings& settings = site.settings;
    if (site.pumps.empty() && site.fixtures.empty()) return "";
    std::string out = inked(style, Ink::heading, "RUNNING COST") + '\n';
    out += wrapped(fmt::format("pumps: {}", year_text(settings, cost.pumps, cost.pumps_cost)), style.width,
                   "  ", "      ");
    for (const PumpEnergy& pump : cost.each_pump)
        out += wrapped(fmt::format("{}: {} h a day, {} kWh", printable(site.pumps[pump.pump].id),
                                   trimmed_text(site.pumps[pump.pump].hours_per_day.value(), 1),
                                   fixed_text(kilowatt_hours(pump.per_year), 0)),
                       style.width, "      ", "        ");
    out += wrapped(fmt::format("lights: {}", year_text(settings, cost.lights, cost.lights_cost)), style.width,
                   "  ", "      ");
    out +=
        wrapped(fmt::format("{} at the meter ({} in lamps) for {} h a night", watts_text(cost.meter_watts()),
                            watts_text(cost.lamps), trimmed_text(settings.hours_per_night.value(), 1)),
                style.width, "      ", "      ");
    if (!cost.left_out.empty()) out += "      transformers without an answer are not counted\n";
    if (cost.pumps > cost.lights && cost.lights.value() > 0)
        out +=
            wrapped(fmt::format("The pumps use {} times what all lights use: their hours are where to save.",
                                fixed_text(cost.pumps / cost.lights, 1)),
                    style.width, "  ", "  ");
    return out;
}

} // namespace rillwatt
