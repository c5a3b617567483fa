#include "rillwatt/mains/circuit_proposal.hpp"

#include "rillwatt/mains/code_limits.hpp"

#include <fmt/format.h>

#include "proposed_circuit.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

std::string pump_names(const MainsCircuit& circuit) {
    std::string names;
    for (const auto& load : circuit.parts)
        if (load.kind == MainsLoadKind::pump) names += (names.empty() ? "" : ", ") + load.id;
    return names;
}

void advise(const Site& site, const MainsCircuit& circuit, std::vector<std::string>& advice) {
    const auto& written = site.circuits[circuit.circuit];
    if (circuit.feeds_pumps() && circuit.feeds_lights())
        advice.push_back(
            fmt::format("{} feeds pumps and lights: take `circuit` out of {} and ask again, and they get "
                        "a circuit of their own, so that a pump that trips leaves the lights on",
                        written.id, pump_names(circuit)));
    if (circuit.parts.empty()) advice.push_back(fmt::format("{} feeds nothing", written.id));
}

} // namespace

BurialChoice burial_choice(Crossing crossing, bool dwelling) {
    BurialChoice choice;
    choice.crossing = crossing;
    choice.direct = *cover_needed(Wiring::direct_burial, crossing, dwelling);
    choice.rigid_metal = *cover_needed(Wiring::rigid_metal, crossing, dwelling);
    choice.pvc = *cover_needed(Wiring::pvc, crossing, dwelling);
    choice.proposed = crossing == Crossing::lawn ? Wiring::direct_burial : Wiring::pvc;
    choice.why = crossing == Crossing::lawn
                     ? "no conduit to buy, and the trench stays open to repair"
                     : "nobody breaks it open again, so the wire must come out of a conduit";
    return choice;
}

CircuitProposal propose_circuits(const Site& site, const MainsSummary& summary) {
    CircuitProposal proposal;
    for (const auto& circuit : summary.circuits) {
        proposal.loads_known = proposal.loads_known && circuit.amps_known;
        advise(site, circuit, proposal.advice);
        ProposedCircuit filled = fill_circuit(site, site.circuits[circuit.circuit], circuit.parts);
        filled.circuit = circuit.circuit;
        filled.figures.circuit = circuit.circuit;
        proposal.circuits.push_back(std::move(filled));
    }
    for (auto& circuit : new_circuits(site, summary.unassigned)) {
        proposal.loads_known = proposal.loads_known && circuit.figures.amps_known;
        proposal.circuits.push_back(std::move(circuit));
    }
    if (site.settings.code == CodeFamily::iec) return proposal;
    for (const Crossing crossing : {Crossing::lawn, Crossing::slab, Crossing::driveway})
        proposal.burial.push_back(burial_choice(crossing, site.settings.dwelling));
    return proposal;
}

} // namespace rillwatt
