#pragma once

#include "rillwatt/check/assessment.hpp"

#include <optional>
#include <vector>

namespace rillwatt {

/// One node of a transformer's tree beside what the solver found for it in one case.
struct SolvedNode {
    std::vector<int> children;              ///< nodes it feeds, in the order of the circuit
    std::optional<Volts> volts;             ///< at the node on the cable, before any fixture lead
    const SegmentResult* segment = nullptr; ///< the cable length that leads here; null at the start of a run
    const LampResult* lamp = nullptr;       ///< of a fixture
    const RunResult* run = nullptr;         ///< of the start of a run
};

/// One transformer's circuit beside its answer in one case.
struct SolvedCircuit {
    const TransformerCircuit* circuit = nullptr;
    const TransformerResult* transformer = nullptr; ///< null: open, or no operating point
    const NoOperatingPoint* unsolved = nullptr;
    std::vector<SolvedNode> nodes; ///< in the order of TransformerCircuit::nodes
};

/// Every circuit of the site, in the order of SiteCircuits::transformers. The volts of a splice follow from
/// the head of its run by the drops the solver found on the way.
std::vector<SolvedCircuit> solved_circuits(const Assessment& assessment, const CaseResult& result);

} // namespace rillwatt
