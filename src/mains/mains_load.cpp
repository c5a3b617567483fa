#include "rillwatt/mains/mains_load.hpp"

#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/mains/motor_current.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

std::optional<std::size_t> circuit_index(const Site& site, const std::optional<std::string>& id) {
    if (!id) return std::nullopt;
    const auto found = std::find_if(site.circuits.begin(), site.circuits.end(),
                                    [&](const BranchCircuit& circuit) { return circuit.id == *id; });
    if (found == site.circuits.end()) return std::nullopt;
    return static_cast<std::size_t>(found - site.circuits.begin());
}

bool is_continuous(Hours per_day) { return per_day >= code_limits::continuous_hours.value; }

double pump_power_factor(const PumpType& type) {
    const VoltAmperes apparent = type.volts * type.amps;
    if (apparent <= VoltAmperes(0)) return 1;
    return std::clamp(type.watts.value() / apparent.value(), 0.0, 1.0);
}

void fill_pump_amps(MainsLoad& load, const PumpType& type) {
    load.nameplate = type.amps;
    load.amps = type.amps;
    load.origin = AmpsOrigin::nameplate;
    load.power_factor = pump_power_factor(type);
    load.leakage_ma = type.leakage_ma;
    if (!load.hardwired || !type.horsepower) return;
    load.table = motor_table_amps(*type.horsepower, type.volts);
    if (!load.table || *load.table <= type.amps) return;
    load.amps = load.table;
    load.origin = AmpsOrigin::motor_table;
}

MainsLoad pump_load(const Site& site, const Catalog& catalog, std::size_t index,
                    std::optional<std::size_t> circuit) {
    const Pump& pump = site.pumps[index];
    MainsLoad load{.kind = MainsLoadKind::pump, .part = index, .id = pump.id};
    load.hours_per_day = pump.hours_per_day;
    load.continuous = is_continuous(pump.hours_per_day);
    load.pump = find_entry(catalog.pumps, pump.model);
    if (load.pump == nullptr) return load;
    load.hardwired =
        !load.pump->cord_and_plug || (circuit && site.circuits[*circuit].outlet == Outlet::hardwired);
    fill_pump_amps(load, *load.pump);
    return load;
}

const TransformerResult* solved(const SiteSolution& solution, std::size_t transformer) {
    if (solution.cases.empty()) return nullptr;
    for (const auto& result : solution.nominal().transformers)
        if (result.transformer == transformer) return &result;
    return nullptr;
}

MainsLoad transformer_load(const Site& site, const TransformerCircuit& circuit,
                           const SiteSolution& solution) {
    const Transformer& transformer = site.transformers[circuit.transformer];
    MainsLoad load{.kind = MainsLoadKind::transformer, .part = circuit.transformer, .id = transformer.id};
    load.hours_per_day = site.settings.hours_per_night;
    load.continuous = is_continuous(load.hours_per_day);
    load.transformer = circuit.type;
    if (circuit.type != nullptr) {
        load.nameplate = circuit.type->va / circuit.type->primary_volts;
        load.amps = load.nameplate;
        load.origin = AmpsOrigin::rating;
    }
    if (const auto* result = solved(solution, circuit.transformer)) {
        load.amps = result->primary_amps;
        load.origin = AmpsOrigin::solved;
    }
    return load;
}

} // namespace

Volts circuit_volts(const Site& site, const BranchCircuit& circuit) {
    return circuit.volts.value_or(site.settings.supply_voltage);
}

std::vector<PlacedLoad> mains_loads(const Site& site, const Catalog& catalog, const SiteCircuits& circuits,
                                    const SiteSolution& solution) {
    std::vector<PlacedLoad> loads;
    for (std::size_t i = 0; i < site.pumps.size(); ++i) {
        const auto circuit = circuit_index(site, site.pumps[i].circuit);
        loads.push_back({circuit, pump_load(site, catalog, i, circuit)});
    }
    for (const auto& circuit : circuits.transformers)
        loads.push_back({circuit_index(site, site.transformers[circuit.transformer].circuit),
                         transformer_load(site, circuit, solution)});
    return loads;
}

} // namespace rillwatt
