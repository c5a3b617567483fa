#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/limits/run_share.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// How near a run is to the most it may carry, nominal case: by the limit of its supply or of its hardest
/// worked cable length, whichever is nearer.
struct RunLoad {
    const RunResult* result = nullptr;
    Amperes amps;      ///< at the place that is nearest to its limit
    Amperes limit;     ///< there
    std::string where; ///< "supply", or the cable and the part it leads to or the link that it is
    double loading = 0;
    bool over = false; ///< the limit is broken
};

/// One for each run that has an answer, in the order of the case.
std::vector<RunLoad> run_loads(const Assessment& assessment);

} // namespace rillwatt
