#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/mains/motor_current.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "proposed_circuit.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

/// The design current a new circuit is filled to: a common 20 A branch, also the most that lighting may hang
/// on.
constexpr Amperes fill_to = code_limits::lighting_branch.value;

Volts volts_of(const Site& site, const MainsLoad& load) {
    if (load.pump != nullptr && !nameplate_fits(load.pump->volts, site.settings.supply_voltage))
        return nameplate_fits(load.pump->volts, Volts(240)) ? Volts(240) : load.pump->volts;
    if (load.transformer != nullptr &&
        !nameplate_fits(load.transformer->primary_volts, site.settings.supply_voltage))
        return load.transformer->primary_volts;
    return site.settings.supply_voltage;
}

/// Loads that go on one new circuit.
struct Group {
    Volts volts;
    MainsLoadKind kind = MainsLoadKind::pump;
    std::vector<MainsLoad> loads;
};

BranchCircuit blank(const Group& group) {
    BranchCircuit circuit;
    circuit.volts = group.volts;
    const bool hardwired = std::any_of(group.loads.begin(), group.loads.end(),
                                       [](const MainsLoad& load) { return load.hardwired; });
    circuit.outlet = hardwired ? Outlet::hardwired : Outlet::receptacle;
    return circuit;
}

bool fits(const Site& site, Group group, const MainsLoad& load) {
    if (group.kind != load.kind || group.volts != volts_of(site, load)) return false;
    if (group.loads.front().hardwired || load.hardwired) return false; // each has its own disconnect
    group.loads.push_back(load);
    const MainsCircuit figures = mains_circuit(site, blank(group), group.loads);
    return figures.design_amps <= fill_to && figures.leakage_ma <= code_limits::gfci_leakage_ma.value;
}

/// First fit, largest first: few circuits, the same answer whatever the order in the file.
std::vector<Group> grouped(const Site& site, std::vector<MainsLoad> loads) {
    std::stable_sort(loads.begin(), loads.end(), [](const MainsLoad& a, const MainsLoad& b) {
        return a.amps.value_or(Amperes(0)) > b.amps.value_or(Amperes(0));
    });
    std::vector<Group> groups;
    for (auto& load : loads) {
        const auto group = std::find_if(groups.begin(), groups.end(),
                                        [&](const Group& candidate) { return fits(site, candidate, load); });
        if (group != groups.end()) {
            group->loads.push_back(std::move(load));
            continue;
        }
        const Volts volts = volts_of(site, load);
        const MainsLoadKind kind = load.kind;
        groups.push_back({volts, kind, {std::move(load)}});
    }
    std::stable_sort(groups.begin(), groups.end(),
                     [](const Group& a, const Group& b) { return a.kind < b.kind; });
    return groups;
}

template<class Parts>
bool has_id(const Parts& parts, const std::string& id) {
    return std::any_of(parts.begin(), parts.end(), [&](const auto& part) { return part.id == id; });
}

bool taken(const Site& site, const std::vector<ProposedCircuit>& circuits, const std::string& id) {
    return has_id(circuits, id) || has_id(site.circuits, id) || has_id(site.pumps, id) ||
           has_id(site.transformers, id) || has_id(site.runs, id) || has_id(site.splices, id) ||
           has_id(site.fixtures, id) || has_id(site.links, id) || has_id(site.areas, id) ||
           has_id(site.sleeves, id) || has_id(site.marks, id) || has_id(site.walks, id) ||
           has_id(site.falls, id) || has_id(site.viewpoints, id);
}

std::string free_id(const Site& site, const std::vector<ProposedCircuit>& circuits, MainsLoadKind kind) {
    for (int number = 1;; ++number) {
        std::string id = fmt::format("{}-{}", kind == MainsLoadKind::pump ? "pumps" : "lights", number);
        if (!taken(site, circuits, id)) return id;
    }
}

std::string why_together(const ProposedCircuit& circuit, MainsLoadKind kind) {
    const auto& figures = circuit.figures;
    if (kind == MainsLoadKind::transformer)
        return "a lighting circuit apart from the pumps: a pump that trips its GFCI leaves the lights on";
    if (figures.parts.size() == 1) return "a circuit of its own for this pump";
    return fmt::format(
        "these pumps share a circuit: {} by design and {} mA of leakage together; give each a GFCI of "
        "its own where one must not stop the others",
        amps_text(figures.design_amps), trimmed_text(figures.leakage_ma, 2));
}

} // namespace

std::vector<ProposedCircuit> new_circuits(const Site& site, const std::vector<MainsLoad>& unassigned) {
    std::vector<ProposedCircuit> circuits;
    for (auto& group : grouped(site, unassigned)) {
        BranchCircuit written = blank(group);
        written.id = free_id(site, circuits, group.kind);
        ProposedCircuit circuit = fill_circuit(site, written, std::move(group.loads));
        circuit.why.insert(circuit.why.begin(), why_together(circuit, group.kind));
        circuits.push_back(std::move(circuit));
    }
    return circuits;
}

} // namespace rillwatt
