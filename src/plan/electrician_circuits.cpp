#include "rillwatt/layout/places.hpp"
#include "rillwatt/mains/branch_conductor.hpp"
#include "rillwatt/mains/breaker.hpp"
#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/mains/motor_current.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "electrician_parts.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

using Columns = std::vector<const ProposedCircuit*>;

const char* mark(bool chosen) { return chosen ? " (proposed)" : ""; }

std::string feeds_cell(const Site& site, const ProposedCircuit& circuit) {
    std::vector<std::string> loads;
    for (const auto& load : circuit.figures.parts) {
        if (load.kind == MainsLoadKind::transformer) {
            loads.push_back(fmt::format("transformer {}, {} h a night", load.id,
                                        trimmed_text(load.hours_per_day.value(), 1)));
            continue;
        }
        const std::string watts = load.pump != nullptr ? watts_text(load.pump->watts) : "model open";
        loads.push_back(fmt::format("pump {} ({}), {}, {} h a day", load.id, site.pumps[load.part].model,
                                    watts, trimmed_text(load.hours_per_day.value(), 1)));
    }
    return loads.empty() ? "nothing yet" : comma_separated(loads);
}

std::string pump_amps(const MainsLoad& load) {
    if (!load.amps) return load.id + " open";
    std::string text =
        fmt::format("{} {} at {}", load.id, amps_text(*load.nameplate), nominal_volts_text(load.pump->volts));
    if (load.pump->horsepower) text += fmt::format(", {} hp", trimmed_text(*load.pump->horsepower, 2));
    if (load.table) text += fmt::format(", table {}", amps_text(*load.table));
    return text;
}

std::string transformer_amps(const MainsLoad& load) {
    if (!load.amps) return load.id + " open: no model yet";
    const std::string rating = load.nameplate ? amps_text(*load.nameplate) : "open";
    if (load.origin == AmpsOrigin::solved)
        return fmt::format("{} {}, rating {}", load.id, amps_text(*load.amps), rating);
    return fmt::format("{} {} by its rating", load.id, rating);
}

std::string amps_cell(const ProposedCircuit& circuit) {
    std::vector<std::string> loads;
    for (const auto& load : circuit.figures.parts)
        loads.push_back(load.kind == MainsLoadKind::pump ? pump_amps(load) : transformer_amps(load));
    return loads.empty() ? "-" : comma_separated(loads);
}

std::string running_cell(const ProposedCircuit& circuit) {
    return fmt::format("{}, {} of it continuous", amps_text(circuit.figures.amps),
                       amps_text(circuit.figures.continuous_amps));
}

std::string breaker_cell(const ProposedCircuit& circuit) {
    if (!circuit.breaker.value) return "open";
    return nominal_amps_text(*circuit.breaker.value) + mark(circuit.breaker.chosen);
}

std::string protection_cell(const SiteSettings& settings, const ProposedCircuit& circuit) {
    const bool abroad = settings.code == CodeFamily::iec;
    const char* device = abroad ? "30 mA residual-current device" : "GFCI";
    if (!circuit.written.gfci) return fmt::format("no {}", device);
    std::string text = fmt::format("{}{}", device, mark(circuit.gfci_chosen));
    if (circuit.figures.parts.size() > 1) text += ", shared by " + comma_separated(circuit.figures.loads);
    if (circuit.figures.leakage_ma > 0)
        text += fmt::format("; leakage {} mA expected", trimmed_text(circuit.figures.leakage_ma, 2));
    if (!circuit.figures.no_leakage.empty())
        text += fmt::format("; leakage of {} not known", comma_separated(circuit.figures.no_leakage));
    return text;
}

std::string conductor_cell(const SiteSettings& settings, const ProposedCircuit& circuit) {
    if (!circuit.conductor.value) return "open";
    std::string text = *circuit.conductor.value + mark(circuit.conductor.chosen);
    if (!circuit.grounding.empty()) text += fmt::format("; ground {}", circuit.grounding);
    if (const auto* copper = find_branch_conductor(*circuit.conductor.value))
        text += fmt::format("; breaker at most {}",
                            nominal_amps_text(largest_breaker(*copper, settings.code_edition)));
    return text;
}

std::string length_cell(const SiteSettings& settings, const ProposedCircuit& circuit) {
    if (circuit.written.length) return distance_text(settings, *circuit.written.length);
    std::string text = "open";
    for (std::size_t i = 0; i < std::min<std::size_t>(circuit.longest.size(), 2); ++i)
        text += fmt::format("; {} up to {}", circuit.longest[i].conductor,
                            most_length_text(circuit.longest[i].length, settings.units));
    return text;
}

std::string drop_cell(const ProposedCircuit& circuit) {
    if (!circuit.figures.drop_known) return "open";
    return fmt::format("{} of {}", percent_text(circuit.figures.drop_ratio),
                       nominal_volts_text(circuit.figures.volts));
}

std::string dip_cell(const ProposedCircuit& circuit) {
    if (!circuit.figures.dip) return "open";
    return fmt::format("{} while {} starts at {}", percent_text(circuit.figures.dip->ratio),
                       circuit.figures.dip->pump, amps_text(circuit.figures.dip->amps));
}

std::string wiring_cell(const ProposedCircuit& circuit) {
    if (!circuit.wiring.value) return circuit.written.outdoors ? "open" : "indoor";
    const std::string method = wiring_name(*circuit.wiring.value) + std::string(mark(circuit.wiring.chosen));
    if (*circuit.wiring.value == Wiring::indoor) return method;
    return fmt::format("{} under {}", method, crossing_name(circuit.written.crosses));
}

std::string cover_cell(const SiteSettings& settings, const ProposedCircuit& circuit) {
    if (!circuit.wiring.value) return "-";
    const auto needed = cover_needed(*circuit.wiring.value, circuit.written.crosses, settings.dwelling);
    if (!needed) return "not buried";
    if (settings.code == CodeFamily::iec)
        return circuit.cover.value ? depth_text(*circuit.cover.value, settings.units) : "open";
    std::string text = circuit.cover.value
                           ? depth_text(*circuit.cover.value, settings.units) + mark(circuit.cover.chosen)
                           : "open";
    text += fmt::format("; least {}", depth_text(needed->by_wiring, settings.units));
    if (needed->as_home_gfci && *needed->as_home_gfci < needed->by_wiring)
        text += fmt::format(", {} with GFCI at its start", depth_text(*needed->as_home_gfci, settings.units));
    return text;
}

std::string outlet_cell(const ProposedCircuit& circuit) {
    const auto& written = circuit.written;
    const char* where = written.outdoors ? "outdoors" : "indoors";
    if (written.outlet == Outlet::hardwired) return fmt::format("hardwired, {}", where);
    if (!written.outdoors) return "receptacle, indoors";
    return written.wet_cover ? "receptacle outdoors, in-use cover and weather-resistant device"
                             : "receptacle outdoors, NO in-use cover yet";
}

std::string cord_text(const Site& site, const ProposedCircuit& circuit, const MainsLoad& load) {
    const Pump& pump = site.pumps[load.part];
    const Area* water = pump.at ? water_at(site, *pump.at) : nullptr;
    std::string text = pump.id + (water != nullptr ? " in " + water->id
                                  : pump.at        ? " beside the water"
                                                   : " not on the plan");
    if (load.hardwired) return text + ", hardwired";
    if (load.pump != nullptr && load.pump->cord > Metres(0))
        text += fmt::format(", cord {}", distance_text(site.settings, load.pump->cord));
    if (pump.at && circuit.written.at)
        text += fmt::format(", outlet {} away",
                            distance_text(site.settings, distance(*pump.at, *circuit.written.at)));
    return text;
}

std::string pumps_cell(const Site& site, const ProposedCircuit& circuit) {
    std::vector<std::string> pumps;
    for (const auto& load : circuit.figures.parts)
        if (load.kind == MainsLoadKind::pump) pumps.push_back(cord_text(site, circuit, load));
    return pumps.empty() ? "-" : comma_separated(pumps);
}

std::string sources(const SiteSettings& settings, std::initializer_list<LimitSource> list) {
    std::string text;
    for (const auto& source : list) {
        const std::string one = source_text(source, settings);
        if (text.find(one) == std::string::npos) text += (text.empty() ? "" : "; ") + one;
    }
    return text;
}

void add_load_rows(SheetTable& table, const Columns& columns, const Site& site) {
    const auto& settings = site.settings;
    table.rows.push_back(sheet_row(
        "feeds", columns, [&](const auto* circuit) { return feeds_cell(site, *circuit); },
        "as planned; watts from catalog"));
    table.rows.push_back(sheet_row(
        "volts", columns, [&](const auto* circuit) { return nominal_volts_text(circuit->figures.volts); },
        "as planned"));
    table.rows.push_back(sheet_row(
        "nameplate", columns, [&](const auto* circuit) { return amps_cell(*circuit); },
        "from catalog; transformers computed from their lights; hardwired motors " +
            source_text(motor_current_source, settings)));
    table.rows.push_back(sheet_row(
        "running", columns, [&](const auto* circuit) { return running_cell(*circuit); },
        "computed; continuous from 3 h a day"));
    table.rows.push_back(sheet_row(
        "design current", columns,
        [&](const auto* circuit) { return amps_text(circuit->figures.design_amps); },
        sources(settings, {code_limits::continuous_factor.source, code_limits::motor_factor.source})));
}

void add_protection_rows(SheetTable& table, const Columns& columns, const Site& site) {
    const auto& settings = site.settings;
    table.rows.push_back(sheet_row(
        "breaker", columns, [&](const auto* circuit) { return breaker_cell(*circuit); },
        "as planned, or proposed here; " + source_text(standard_breaker_source, settings)));
    table.rows.push_back(sheet_row(
        "ground fault", columns, [&](const auto* circuit) { return protection_cell(settings, *circuit); },
        sources(settings, {code_limits::fountain_gfci, code_limits::outdoor_receptacle_gfci}) +
            "; leakage from catalog, judged at 3 mA: common practice"));
    table.rows.push_back(sheet_row(
        "copper", columns, [&](const auto* circuit) { return conductor_cell(settings, *circuit); },
        sources(settings, {ampacity_source, small_conductor_source, grounding_source})));
}

void add_way_rows(SheetTable& table, const Columns& columns, const Site& site, bool pumps) {
    const auto& settings = site.settings;
    table.rows.push_back(sheet_row(
        "panel to outlet", columns, [&](const auto* circuit) { return length_cell(settings, *circuit); },
        "as planned, one way"));
    table.rows.push_back(sheet_row(
        "drop at outlet", columns, [&](const auto* circuit) { return drop_cell(*circuit); },
        sources(settings, {branch_impedance_source, code_limits::branch_drop.source})));
    if (pumps)
        table.rows.push_back(sheet_row(
            "starting dip", columns, [&](const auto* circuit) { return dip_cell(*circuit); },
            fmt::format("ESTIMATE: {} times running amperes at power factor {}, common practice",
                        trimmed_text(code_limits::starting_current.value, 1),
                        trimmed_text(code_limits::starting_power_factor.value, 1))));
    table.rows.push_back(sheet_row(
        "wiring", columns, [&](const auto* circuit) { return wiring_cell(*circuit); },
        "as planned, or proposed here"));
    table.rows.push_back(sheet_row(
        "cover", columns, [&](const auto* circuit) { return cover_cell(settings, *circuit); },
        "as planned, or proposed here; least by " + source_text(burial_source, settings)));
}

void add_outlet_rows(SheetTable& table, const Columns& columns, const Site& site, bool pumps) {
    const auto& settings = site.settings;
    table.rows.push_back(sheet_row(
        "outlet", columns, [&](const auto* circuit) { return outlet_cell(*circuit); },
        "as planned; " + source_text(code_limits::wet_location_cover, settings)));
    table.rows.push_back(sheet_row(
        "outlet on plan", columns, [&](const auto* circuit) { return place_text(site, circuit->written.at); },
        fmt::format("plan; receptacles {} from water: {}",
                    distance_text(settings, code_limits::receptacle_to_water.value),
                    source_text(code_limits::receptacle_to_water.source, settings))));
    if (pumps)
        table.rows.push_back(sheet_row(
            "pumps", columns, [&](const auto* circuit) { return pumps_cell(site, *circuit); },
            fmt::format("cord from catalog, distances from plan; at most {} of cord in water: {}",
                        distance_text(settings, code_limits::cord_in_water.value),
                        source_text(code_limits::cord_in_water.source, settings))));
}

SheetTable circuit_table(const Site& site, const std::string& title, const Columns& columns) {
    SheetTable table{title, {}, {}};
    bool pumps = false;
    for (const auto* circuit : columns) {
        table.columns.push_back(circuit->circuit ? circuit->id : circuit->id + " (proposed)");
        pumps = pumps || circuit->figures.feeds_pumps();
    }
    add_load_rows(table, columns, site);
    add_protection_rows(table, columns, site);
    add_way_rows(table, columns, site, pumps);
    add_outlet_rows(table, columns, site, pumps);
    return table;
}

const char* kind_of(const ProposedCircuit& circuit) {
    const bool pumps = circuit.figures.feeds_pumps();
    const bool lights = circuit.figures.feeds_lights();
    if (pumps && lights) return "Pumps and lights on one circuit";
    if (pumps) return "Pump circuits";
    return lights ? "Lighting circuits" : "Spare circuits";
}

} // namespace

std::vector<SheetTable> circuit_tables(const Assessment& assessment, const CircuitProposal& proposal) {
    std::vector<SheetTable> tables;
    for (const std::string title :
         {"Pump circuits", "Lighting circuits", "Pumps and lights on one circuit", "Spare circuits"}) {
        Columns columns;
        for (const auto& circuit : proposal.circuits)
            if (kind_of(circuit) == title) columns.push_back(&circuit);
        for (std::size_t begin = 0; begin < columns.size(); begin += sheet_columns) {
            const auto end = std::min(begin + sheet_columns, columns.size());
            tables.push_back(circuit_table(*assessment.site, title,
                                           Columns(columns.begin() + static_cast<std::ptrdiff_t>(begin),
                                                   columns.begin() + static_cast<std::ptrdiff_t>(end))));
        }
    }
    return tables;
}

} // namespace rillwatt
