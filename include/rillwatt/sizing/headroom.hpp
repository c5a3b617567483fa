#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/search/size_options.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// How much more can hang at one place before something breaks.
struct Headroom {
    std::string part;        ///< run, splice or fixture; or a transformer: at the head of its runs
    std::string transformer; ///< that serves it
    bool broken = false;     ///< something is broken already
    bool limited = true;     ///< false: nothing breaks up to `most_headroom`
    VoltAmperes more;        ///< of constant-power load at the place, on no lead
    std::string breaks;      ///< part that breaks first
    std::string what;        ///< in words, with figures
    std::string rule;        ///< id of the rule that would find it
};

/// Beyond it no headroom is looked for.
inline constexpr VoltAmperes most_headroom{5000};

/// What each run, splice, fixture and transformer of the complete circuits can still carry in the nominal
/// case: the window of every lamp (with a margin), the ampacity of every length, the limit of every run and
/// the loading of the transformer. Found by bisection with the circuit solver, to 0.05 VA. The added light is
/// taken to work down to the least window of the lamps that hang on the same run. For a transformer the load
/// is added at the heads of its runs, where it is best borne, spread evenly.
std::vector<Headroom> find_headroom(const Assessment& assessment, const SizeOptions& options);

} // namespace rillwatt
