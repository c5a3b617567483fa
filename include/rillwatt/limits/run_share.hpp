#pragma once

#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/limits/standing.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <vector>

namespace rillwatt {

/// How near a run is to the most it may carry: by the output of its transformer or by the cable length that
/// is used most, whichever is nearer. Magnitudes of currents.
struct RunShare {
    const RunResult* run = nullptr;
    const SegmentResult* segment = nullptr; ///< where the limit is; null: at the output
    Standing standing;                      ///< amperes there against the limit
};

/// One for each run that has an answer, in the order of the case, into which they point.
std::vector<RunShare> run_shares(const Site& site, const SiteCircuits& circuits, const CaseResult& result);

} // namespace rillwatt
