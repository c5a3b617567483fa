#include "rillwatt/plan/branch_kinds.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include "page_html.hpp"
#include "page_sections.hpp"

namespace rillwatt {

namespace {

std::string load_item(const Site& site, const MainsLoad& load) {
    const bool pump = load.kind == MainsLoadKind::pump;
    const std::string model =
        pump ? site.pumps[load.part].model : site.transformers[load.part].model.value_or("model open");
    std::string text =
        fmt::format("{} {}: {}", pump ? "pump" : "transformer", part_link(load.id), html_text(model));
    if (load.amps) text += ", " + amps_text(*load.amps);
    return fmt::format("<li{}>{}</li>", part_attribute(load.id), text);
}

std::string protection(const BranchCircuit& written) {
    return fmt::format("{}, {}",
                       written.breaker ? nominal_amps_text(*written.breaker) + " breaker" : "breaker open",
                       written.gfci ? "GFCI" : "no GFCI");
}

std::string circuit_row(const Site& site, const MainsCircuit& circuit) {
    const BranchCircuit& written = site.circuits[circuit.circuit];
    std::string loads;
    for (const MainsLoad& load : circuit.parts)
        loads += load_item(site, load);
    return fmt::format("<tr{}><th scope=\"row\">{}{}</th><td><ul class=\"plain free\">{}</ul></td>"
                       "<td class=\"n\">{}{}</td></tr>\n",
                       part_attribute(written.id), html_text(written.id),
                       sub_line(nominal_volts_text(circuit.volts) + ", " + protection(written)), loads,
                       amps_text(circuit.amps), sub_line("design for " + amps_text(circuit.design_amps)));
}

std::string year_row(std::string_view name, WattHours energy, Money cost, const SiteSettings& settings) {
    return fmt::format(
        "<tr><th scope=\"row\">{}</th><td class=\"n\">{} kWh</td><td class=\"n\">{}</td></tr>\n", name,
        fixed_text(kilowatt_hours(energy), 0),
        settings.energy_price > 0 ? html_text(money_text(cost, settings.currency)) : "no price given");
}

} // namespace

std::string mains_section(const ReportPageParts& parts) {
    const Assessment& assessment = parts.site.assessment;
    if (assessment.mains.circuits.empty()) return "";
    std::string out = section_open("mains", "Line voltage");
    out += "<p>For the licensed electrician, who does this side. The sheet to hand over is "
           "<code>electrician.html</code> "
           "beside this page.</p>\n";
    for (const BranchKind& kind : branch_kinds(assessment)) {
        out += table_open(kind.heading, {"Circuit", "What is on it", "#Running"});
        for (const MainsCircuit* circuit : kind.circuits)
            out += circuit_row(*assessment.site, *circuit);
        out += "</tbody></table>\n";
    }
    return out + "</section>\n";
}

std::string cost_section(const ReportPageParts& parts) {
    const Assessment& assessment = parts.site.assessment;
    const RunningCost& cost = assessment.mains.cost;
    const SiteSettings& settings = assessment.site->settings;
    if (assessment.site->pumps.empty() && assessment.site->fixtures.empty()) return "";
    std::string out = section_open("cost", "Running cost");
    out += table_open(
        fmt::format("A year of {} nights, {} h of light a night; {} at the meter while the lights are on",
                    trimmed_text(settings.nights_per_year, 0),
                    trimmed_text(settings.hours_per_night.value(), 1), watts_text(cost.meter_watts())),
        {"What", "#Energy", "#Cost"});
    for (const PumpEnergy& pump : cost.each_pump)
        out += fmt::format(
            "<tr{}><th scope=\"row\">{}{}</th><td class=\"n\">{} kWh</td><td class=\"n\"></td></tr>\n",
            part_attribute(assessment.site->pumps[pump.pump].id),
            part_link(assessment.site->pumps[pump.pump].id),
            sub_line(trimmed_text(assessment.site->pumps[pump.pump].hours_per_day.value(), 1) + " h a day"),
            fixed_text(kilowatt_hours(pump.per_year), 0));
    out += year_row("All pumps", cost.pumps, cost.pumps_cost, settings);
    out += year_row("All lights", cost.lights, cost.lights_cost, settings) + "</tbody></table>\n";
    if (cost.pumps > cost.lights && cost.lights.value() > 0)
        out +=
            fmt::format("<p>The pumps use {} times what all lights use: their hours are where to save.</p>\n",
                        fixed_text(cost.pumps / cost.lights, 1));
    return out + "</section>\n";
}

} // namespace rillwatt
