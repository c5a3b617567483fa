#include "rillwatt/plan/electrician_sheet.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

namespace rillwatt {

namespace {

std::string year_text(const SiteSettings& settings, WattHours energy) {
    const double kwh = kilowatt_hours(energy);
    std::string text = fmt::format("{} kWh a year", fixed_text(kwh, 0));
    if (settings.energy_price > 0)
        text += ", " + money_text(Money(kwh * settings.energy_price), settings.currency);
    return text;
}

/// What a year saves when every pump that runs an hour a day or more runs an hour less.
WattHours hour_saved(const Assessment& assessment) {
    WattHours saved;
    for (const auto& pump : assessment.mains.cost.each_pump) {
        const Hours per_day = assessment.site->pumps[pump.pump].hours_per_day;
        if (per_day >= Hours(1)) saved += pump.per_year / per_day.value();
    }
    return saved;
}

} // namespace

std::vector<std::string> running_cost_lines(const Assessment& assessment) {
    const RunningCost& cost = assessment.mains.cost;
    const SiteSettings& settings = assessment.site->settings;
    std::vector<std::string> lines;
    if (!assessment.site->pumps.empty()) lines.push_back("pumps " + year_text(settings, cost.pumps));
    if (!assessment.site->fixtures.empty()) lines.push_back("lights " + year_text(settings, cost.lights));
    if (cost.lights.value() > 0 && cost.pumps > cost.lights)
        lines.push_back(fmt::format(
            "the pumps take {} times what all lights take; an hour less a day saves {}",
            fixed_text(cost.pumps / cost.lights, 1), year_text(settings, hour_saved(assessment))));
    if (!cost.left_out.empty()) lines.push_back("transformers that could not be computed are left out");
    return lines;
}

} // namespace rillwatt
