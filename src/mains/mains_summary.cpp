#include "rillwatt/mains/mains_summary.hpp"

#include "rillwatt/mains/branch_conductor.hpp"
#include "rillwatt/mains/code_limits.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

bool has_kind(const MainsCircuit& circuit, MainsLoadKind kind) {
    return std::any_of(circuit.parts.begin(), circuit.parts.end(),
                       [&](const MainsLoad& load) { return load.kind == kind; });
}

/// The largest pump that is not in the continuous part already.
Amperes largest_other_motor(const std::vector<MainsLoad>& loads) {
    Amperes largest(0);
    for (const auto& load : loads)
        if (load.kind == MainsLoadKind::pump && !load.continuous && load.amps)
            largest = std::max(largest, *load.amps);
    return largest;
}

void add_currents(MainsCircuit& circuit) {
    for (const auto& load : circuit.parts) {
        circuit.loads.push_back(load.id);
        if (!load.amps) {
            circuit.amps_known = false;
            continue;
        }
        circuit.amps += *load.amps;
        if (load.continuous) circuit.continuous_amps += *load.amps;
    }
    circuit.design_amps = circuit.amps +
                          (code_limits::continuous_factor.value - 1) * circuit.continuous_amps +
                          (code_limits::motor_factor.value - 1) * largest_other_motor(circuit.parts);
}

void add_leakage(MainsCircuit& circuit) {
    for (const auto& load : circuit.parts) {
        if (load.leakage_ma)
            circuit.leakage_ma += *load.leakage_ma;
        else if (load.kind == MainsLoadKind::pump)
            circuit.no_leakage.push_back(load.id);
    }
}

std::optional<StartingDip> starting_dip(const MainsCircuit& circuit, const BranchImpedance& wire,
                                        Metres length, Volts running_drop) {
    std::optional<StartingDip> worst;
    for (const auto& load : circuit.parts) {
        if (load.kind != MainsLoadKind::pump || !load.amps) continue;
        const Amperes amps = code_limits::starting_current.value * *load.amps;
        const Volts others = running_drop - branch_drop(wire, length, *load.amps, load.power_factor);
        const Volts start = branch_drop(wire, length, amps, code_limits::starting_power_factor.value);
        const double ratio = (others + start) / circuit.volts;
        if (!worst || ratio > worst->ratio) worst = StartingDip{load.id, amps, ratio};
    }
    return worst;
}

/// Drop of all loads at the outlet, `2 L I (R cos phi + X sin phi)` with the currents added by component.
void add_drop(MainsCircuit& circuit, const BranchCircuit& written) {
    if (!written.conductor || !written.length || !circuit.amps_known || circuit.volts <= Volts(0)) return;
    const auto wire = branch_impedance(*written.conductor);
    if (!wire) return;
    Volts drop(0);
    for (const auto& load : circuit.parts)
        drop += branch_drop(*wire, *written.length, *load.amps, load.power_factor);
    circuit.drop_ratio = drop / circuit.volts;
    circuit.drop_known = true;
    circuit.dip = starting_dip(circuit, *wire, *written.length, drop);
}

} // namespace

bool MainsCircuit::feeds_pumps() const { return has_kind(*this, MainsLoadKind::pump); }
bool MainsCircuit::feeds_lights() const { return has_kind(*this, MainsLoadKind::transformer); }

MainsCircuit mains_circuit(const Site& site, const BranchCircuit& written, std::vector<MainsLoad> loads) {
    MainsCircuit circuit;
    circuit.volts = circuit_volts(site, written);
    circuit.parts = std::move(loads);
    add_currents(circuit);
    add_leakage(circuit);
    add_drop(circuit, written);
    return circuit;
}

MainsSummary summarise_mains(const Site& site, const Catalog& catalog, const SiteCircuits& circuits,
                             const SiteSolution& solution) {
    MainsSummary summary;
    std::vector<std::vector<MainsLoad>> by_circuit(site.circuits.size());
    for (auto& placed : mains_loads(site, catalog, circuits, solution)) {
        auto& list = placed.circuit ? by_circuit[*placed.circuit] : summary.unassigned;
        list.push_back(std::move(placed.load));
    }
    for (std::size_t i = 0; i < site.circuits.size(); ++i) {
        summary.circuits.push_back(mains_circuit(site, site.circuits[i], std::move(by_circuit[i])));
        summary.circuits.back().circuit = i;
    }
    summary.cost = running_cost(site, catalog, solution);
    return summary;
}

} // namespace rillwatt
