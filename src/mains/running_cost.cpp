#include "rillwatt/mains/running_cost.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

/// watts * hours a day * days a year; the days have no unit.
WattHours per_year(Watts watts, Hours per_day, const SiteSettings& settings) {
    return watts * per_day * settings.nights_per_year;
}

Money price(WattHours energy, const SiteSettings& settings) {
    return Money(kilowatt_hours(energy) * settings.energy_price);
}

void add_lights(RunningCost& cost, const CaseResult& nominal) {
    for (const auto& lamp : nominal.lamps)
        cost.lamps += lamp.watts;
    for (const auto& transformer : nominal.transformers) {
        cost.winding_loss += transformer.winding_loss;
        cost.no_load += transformer.no_load;
    }
    cost.cable_loss = nominal.cable_loss;
}

std::vector<std::size_t> transformers_left_out(const Site& site, const SiteSolution& solution) {
    std::vector<std::size_t> left_out;
    for (std::size_t i = 0; i < site.transformers.size(); ++i) {
        const bool computed =
            !solution.cases.empty() &&
            std::any_of(solution.nominal().transformers.begin(), solution.nominal().transformers.end(),
                        [&](const TransformerResult& result) { return result.transformer == i; });
        if (!computed) left_out.push_back(i);
    }
    return left_out;
}

} // namespace

RunningCost running_cost(const Site& site, const Catalog& catalog, const SiteSolution& solution) {
    RunningCost cost;
    if (!solution.cases.empty()) add_lights(cost, solution.nominal());
    cost.left_out = transformers_left_out(site, solution);
    cost.lights = per_year(cost.meter_watts(), site.settings.hours_per_night, site.settings);
    for (std::size_t i = 0; i < site.pumps.size(); ++i) {
        const auto* type = find_entry(catalog.pumps, site.pumps[i].model);
        if (type == nullptr) continue;
        const WattHours energy = per_year(type->watts, site.pumps[i].hours_per_day, site.settings);
        cost.each_pump.push_back({i, energy});
        cost.pumps += energy;
    }
    cost.lights_cost = price(cost.lights, site.settings);
    cost.pumps_cost = price(cost.pumps, site.settings);
    return cost;
}

} // namespace rillwatt
