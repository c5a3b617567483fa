#include "rillwatt/plan/branch_kinds.hpp"

namespace rillwatt {

std::vector<BranchKind> branch_kinds(const Assessment& assessment) {
    std::vector<BranchKind> kinds = {{"PUMP CIRCUITS", {}},
                                     {"LIGHTING CIRCUITS", {}},
                                     {"PUMPS AND LIGHTS ON ONE CIRCUIT", {}},
                                     {"SPARE CIRCUITS", {}}};
    for (const MainsCircuit& circuit : assessment.mains.circuits) {
        const bool pumps = circuit.feeds_pumps();
        const bool lights = circuit.feeds_lights();
        kinds[pumps && lights ? 2 : pumps ? 0 : lights ? 1 : 3].circuits.push_back(&circuit);
    }
    std::erase_if(kinds, [](const BranchKind& kind) { return kind.circuits.empty(); });
    return kinds;
}

} // namespace rillwatt
