#include "rillwatt/layout/places.hpp"
#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "electrician_parts.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

using Columns = std::vector<const TransformerCircuit*>;

const TransformerResult* solved(const Assessment& assessment, const TransformerCircuit& circuit) {
    for (const auto& result : assessment.solution.nominal().transformers)
        if (result.transformer == circuit.transformer) return &result;
    return nullptr;
}

std::string model_cell(const TransformerCircuit& circuit) {
    if (circuit.type == nullptr) return "open";
    return fmt::format("{}, {}, {} primary", circuit.type->id, va_text(circuit.type->va),
                       nominal_volts_text(circuit.type->primary_volts));
}

std::string load_cell(const Assessment& assessment, const TransformerCircuit& circuit) {
    const auto* result = solved(assessment, circuit);
    if (result == nullptr) return "not computed: something is open";
    return fmt::format("{}, {} of rating, {} in", va_text(result->load), percent_text(result->loading),
                       amps_text(result->primary_amps));
}

std::string circuit_cell(const Site& site, const TransformerCircuit& circuit) {
    return site.transformers[circuit.transformer].circuit.value_or("open");
}

std::string taps_cell(const Site& site, const TransformerCircuit& circuit) {
    std::vector<std::string> runs;
    for (const auto& run : circuit.runs)
        runs.push_back(
            fmt::format("{} {}", site.runs[run.run].id, run.tap ? nominal_volts_text(*run.tap) : "tap open"));
    return runs.empty() ? "-" : comma_separated(runs);
}

std::size_t lights_in_water(const Site& site, const TransformerCircuit& circuit) {
    return static_cast<std::size_t>(
        std::count_if(circuit.nodes.begin(), circuit.nodes.end(), [&](const CircuitNode& node) {
            return node.kind == NodeKind::fixture && in_water(site, site.fixtures[node.part]);
        }));
}

std::string water_cell(const Site& site, const TransformerCircuit& circuit) {
    const std::size_t wet = lights_in_water(site, circuit);
    const bool listed = circuit.type != nullptr && circuit.type->water_listed;
    if (wet == 0) return listed ? "listed for water, no light in water" : "no light in water";
    const std::string lights = wet == 1 ? "1 light in water" : fmt::format("{} lights in water", wet);
    if (circuit.type == nullptr) return lights + ": the model must be pool-listed";
    return lights + (listed ? ": pool-listed supply, needed" : ": NOT pool-listed, needed");
}

std::string control_cell(const Site& site, const TransformerCircuit& circuit) {
    const std::string& control = site.transformers[circuit.transformer].control;
    return control.empty() ? "open" : control;
}

SheetTable supply_table(const Assessment& assessment, const Columns& columns) {
    const Site& site = *assessment.site;
    const auto& settings = site.settings;
    SheetTable table{"Low-voltage supplies", {}, {}};
    for (const auto* circuit : columns)
        table.columns.push_back(site.transformers[circuit->transformer].id);
    const auto& contact = code_limits::wet_contact_limit(settings);
    const auto add = [&](const char* what, auto cell, std::string source) {
        table.rows.push_back(sheet_row(
            what, columns, [&](const auto* circuit) { return cell(*circuit); }, std::move(source)));
    };
    add(
        "on circuit", [&](const auto& circuit) { return circuit_cell(site, circuit); }, "as planned");
    add(
        "model", [&](const auto& circuit) { return model_cell(circuit); },
        "as planned, chosen by hand or by computation; ratings from catalog");
    add(
        "load", [&](const auto& circuit) { return load_cell(assessment, circuit); },
        "computed, nominal supply");
    add(
        "taps", [&](const auto& circuit) { return taps_cell(site, circuit); },
        "as planned; contact limit " + nominal_volts_text(contact.value) + ": " +
            source_text(contact.source, settings));
    add(
        "water", [&](const auto& circuit) { return water_cell(site, circuit); },
        "plan and catalog; " + source_text(code_limits::water_supply, settings));
    add(
        "place",
        [&](const auto& circuit) { return place_text(site, site.transformers[circuit.transformer].at); },
        fmt::format("plan; {} from water unless listed: {}",
                    distance_text(settings, code_limits::low_voltage_to_water.value),
                    source_text(code_limits::low_voltage_to_water.source, settings)));
    add(
        "control", [&](const auto& circuit) { return control_cell(site, circuit); }, "as planned");
    return table;
}

} // namespace

std::vector<SheetTable> supply_tables(const Assessment& assessment) {
    std::vector<SheetTable> tables;
    Columns columns;
    for (const auto& circuit : assessment.circuits.transformers) {
        columns.push_back(&circuit);
        if (columns.size() < sheet_columns) continue;
        tables.push_back(supply_table(assessment, columns));
        columns.clear();
    }
    if (!columns.empty()) tables.push_back(supply_table(assessment, columns));
    return tables;
}

} // namespace rillwatt
