#include "proposed_circuit.hpp"

#include "rillwatt/mains/branch_conductor.hpp"
#include "rillwatt/mains/breaker.hpp"
#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rillwatt {

namespace {

/// Smallest rating of a receptacle circuit, whatever the standard sizes begin with.
constexpr Amperes smallest_branch{15};

constexpr double slack = 1e-9;

/// What the breaker must carry: the design current, and the share that one load may take of it.
Amperes breaker_needed(const MainsCircuit& figures) {
    Amperes needed = std::max(figures.design_amps, smallest_branch);
    for (const auto& load : figures.parts) {
        if (load.kind != MainsLoadKind::pump || !load.amps) continue;
        if (!load.hardwired) needed = std::max(needed, *load.amps / code_limits::cord_load_share.value);
        if (load.hardwired && figures.parts.size() > 1)
            needed = std::max(needed, *load.amps / code_limits::fixed_load_share.value);
    }
    return needed;
}

void choose_breaker(const Site& site, ProposedCircuit& circuit) {
    circuit.breaker.value = circuit.written.breaker;
    if (circuit.written.breaker) return;
    circuit.breaker.chosen = true;
    const Amperes needed = breaker_needed(circuit.figures);
    const auto rating = standard_breaker_for(needed - Amperes(slack), site.settings.code_edition);
    if (!rating) {
        circuit.cannot.push_back(
            fmt::format("no standard breaker up to 200 A carries {}", amps_text(needed)));
        return;
    }
    circuit.breaker.value = circuit.written.breaker = rating;
    circuit.why.push_back(fmt::format("{} breaker: the smallest standard rating for {} by design",
                                      nominal_amps_text(*rating), amps_text(circuit.figures.design_amps)));
    if (circuit.figures.feeds_lights() && *rating > code_limits::lighting_branch.value)
        circuit.cannot.push_back(fmt::format("lighting hangs on at most {}: move a load to another circuit",
                                             nominal_amps_text(code_limits::lighting_branch.value)));
}

/// A conductor that is written may be too thin for the breaker, written or chosen.
void compare_with_written(const Site& site, ProposedCircuit& circuit) {
    const auto* copper =
        circuit.written.conductor ? find_branch_conductor(*circuit.written.conductor) : nullptr;
    if (copper == nullptr || !circuit.breaker.value) return;
    const Amperes largest = largest_breaker(*copper, site.settings.code_edition);
    if (*circuit.breaker.value > largest)
        circuit.cannot.push_back(
            fmt::format("{} may have a {} breaker at most: thicker copper or a smaller breaker", copper->size,
                        nominal_amps_text(largest)));
}

bool carries(const Site& site, const BranchConductor& copper, const ProposedCircuit& circuit) {
    if (usable_ampacity(copper) + Amperes(slack) < circuit.figures.design_amps) return false;
    return !circuit.breaker.value ||
           *circuit.breaker.value <= largest_breaker(copper, site.settings.code_edition);
}

MainsCircuit figures_with(const Site& site, BranchCircuit written, std::string_view conductor,
                          const std::vector<MainsLoad>& loads) {
    written.conductor = std::string(conductor);
    return mains_circuit(site, written, loads);
}

/// The thinnest copper that carries breaker and load; null: none in the table does.
const BranchConductor* smallest_copper(const Site& site, const ProposedCircuit& circuit) {
    for (const auto& copper : branch_conductors())
        if (carries(site, copper, circuit)) return &copper;
    return nullptr;
}

void take_conductor(ProposedCircuit& circuit, const BranchConductor& copper,
                    const BranchConductor& smallest) {
    circuit.conductor.value = circuit.written.conductor = std::string(copper.size);
    if (&copper == &smallest)
        circuit.why.push_back(fmt::format("{} copper: the thinnest for this breaker and load", copper.size));
    else
        circuit.why.push_back(
            fmt::format("{} copper instead of {}: the thinnest that keeps the drop within {}", copper.size,
                        smallest.size, percent_text(code_limits::branch_drop.value)));
}

void choose_conductor(const Site& site, ProposedCircuit& circuit, const BranchConductor& smallest) {
    circuit.conductor.value = circuit.written.conductor;
    if (circuit.written.conductor) return;
    circuit.conductor.chosen = true;
    for (const auto& copper : branch_conductors()) {
        if (copper.circular_mils < smallest.circular_mils || !carries(site, copper, circuit)) continue;
        const auto figures = figures_with(site, circuit.written, copper.size, circuit.figures.parts);
        if (figures.drop_known && figures.drop_ratio > code_limits::branch_drop.value + slack) continue;
        take_conductor(circuit, copper, smallest);
        return;
    }
    const auto& thickest = branch_conductors().back();
    take_conductor(circuit, thickest, smallest);
    const auto figures = figures_with(site, circuit.written, thickest.size, circuit.figures.parts);
    circuit.cannot.push_back(
        fmt::format("even {} drops {}: a higher voltage, a nearer panel or a smaller load", thickest.size,
                    percent_text(figures.drop_ratio)));
}

/// The length at which the drop reaches its limit; the drop is in proportion to the length.
void add_longest_runs(const Site& site, ProposedCircuit& circuit) {
    BranchCircuit trial = circuit.written;
    trial.length = Metres(1);
    const auto* chosen = circuit.conductor.value ? find_branch_conductor(*circuit.conductor.value) : nullptr;
    for (const auto& copper : branch_conductors()) {
        if (chosen == nullptr || copper.circular_mils < chosen->circular_mils) continue;
        const auto figures = figures_with(site, trial, copper.size, circuit.figures.parts);
        if (!figures.drop_known || figures.drop_ratio <= 0) continue;
        circuit.longest.push_back(
            {std::string(copper.size), Metres(code_limits::branch_drop.value / figures.drop_ratio)});
    }
}

void choose_grounding(ProposedCircuit& circuit, const BranchConductor& smallest) {
    const auto* chosen = circuit.conductor.value ? find_branch_conductor(*circuit.conductor.value) : nullptr;
    if (chosen == nullptr || !circuit.breaker.value) return;
    const auto size = grounding_conductor(*circuit.breaker.value, *chosen, smallest);
    if (size) circuit.grounding = *size;
}

void choose_protection(const Site& site, ProposedCircuit& circuit) {
    const bool needed = circuit.figures.feeds_pumps() ||
                        (circuit.written.outlet == Outlet::receptacle && circuit.written.outdoors);
    if (circuit.written.gfci || !needed) return;
    circuit.written.gfci = true;
    circuit.gfci_chosen = true;
    const char* device =
        site.settings.code == CodeFamily::iec ? "a residual-current device of 30 mA" : "GFCI protection";
    circuit.why.push_back(fmt::format("{}: {}", device,
                                      circuit.figures.feeds_pumps() ? "the pumps of a water feature need it"
                                                                    : "an outdoor receptacle needs it"));
}

void choose_wiring(const Site& site, ProposedCircuit& circuit) {
    auto& written = circuit.written;
    circuit.wiring.value = written.wiring;
    if (!written.wiring && written.outdoors) {
        const BurialChoice choice = burial_choice(written.crosses, site.settings.dwelling);
        circuit.wiring = {choice.proposed, true};
        written.wiring = choice.proposed;
        circuit.why.push_back(fmt::format("{} under {}: {}", wiring_name(choice.proposed),
                                          crossing_name(written.crosses), choice.why));
    }
    circuit.cover.value = written.cover;
    if (written.cover || !written.wiring) return;
    const auto needed = cover_needed(*written.wiring, written.crosses, site.settings.dwelling);
    if (!needed) return;
    circuit.cover = {needed->by_wiring, true};
    written.cover = needed->by_wiring;
    circuit.why.push_back(fmt::format("{} of cover: the burial table for {} under {}",
                                      depth_text(needed->by_wiring, site.settings.units),
                                      wiring_name(*written.wiring), crossing_name(written.crosses)));
}

void choose_copper(const Site& site, ProposedCircuit& circuit) {
    const BranchConductor* smallest = smallest_copper(site, circuit);
    if (smallest == nullptr) {
        circuit.conductor.value = circuit.written.conductor;
        circuit.cannot.push_back("no copper up to 4 AWG carries it: split the loads over more circuits");
        return;
    }
    choose_conductor(site, circuit, *smallest);
    choose_grounding(circuit, *smallest);
}

/// The tables to choose from are those of the US code: elsewhere what is open stays open.
void keep_written(ProposedCircuit& circuit) {
    circuit.breaker.value = circuit.written.breaker;
    circuit.conductor.value = circuit.written.conductor;
    circuit.wiring.value = circuit.written.wiring;
    circuit.cover.value = circuit.written.cover;
}

} // namespace

ProposedCircuit fill_circuit(const Site& site, const BranchCircuit& written, std::vector<MainsLoad> loads) {
    ProposedCircuit circuit;
    circuit.id = written.id;
    circuit.written = written;
    circuit.figures = mains_circuit(site, written, std::move(loads));
    choose_protection(site, circuit);
    if (site.settings.code == CodeFamily::iec) {
        keep_written(circuit);
        return circuit;
    }
    choose_breaker(site, circuit);
    compare_with_written(site, circuit);
    choose_copper(site, circuit);
    choose_wiring(site, circuit);
    circuit.figures = mains_circuit(site, circuit.written, std::move(circuit.figures.parts));
    add_longest_runs(site, circuit);
    return circuit;
}

} // namespace rillwatt
