#pragma once

#include "rillwatt/check/assessment.hpp"

#include <optional>
#include <span>
#include <vector>

namespace rillwatt {

/// One node of a transformer's tree beside what the solver found for it in one case.
struct SolvedNode {
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

    /// The nodes that a node feeds, in the order of the circuit.
    std::span<const int> fed(std::size_t node) const {
        return std::span(fed_).subspan(fed_from_[node], fed_from_[node + 1] - fed_from_[node]);
    }
    void set_fed();

  private:
    std::vector<int> fed_;              ///< of one node after the other
    std::vector<std::size_t> fed_from_; ///< where those of each node begin; one more for the end
};

/// Every circuit of the site, in the order of SiteCircuits::transformers.
std::vector<SolvedCircuit> solved_circuits(const Assessment& assessment, const CaseResult& result);

} // namespace rillwatt
