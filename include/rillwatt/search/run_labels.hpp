#pragma once

#include "rillwatt/search/effort.hpp"
#include "rillwatt/search/labels.hpp"
#include "rillwatt/search/problem.hpp"
#include "rillwatt/search/supply.hpp"
#include "rillwatt/search/volt_prices.hpp"

#include <vector>

namespace rillwatt::search {

/// All ways to cable one run that are worth looking at, as seen at its head.
struct RunLabels {
    std::vector<Label> labels; ///< by ascending cost
    std::vector<Origin> origins;
    bool complete = true; ///< false: the effort ran out before the head was reached

    /// The cable of each node of the run (typed ones included) that a label stands for.
    std::vector<int> cables_of(const RunProblem& run, const Label& label) const;
};

/// How thoroughly a run is searched.
struct RunSearch {
    bool per_length = false;
    bool any_order = false;
    std::vector<Supply> supplies;       ///< what may feed the run
    LabelFrame frame;                   ///< `floor`, `top` and `two_sided` are filled by `frame_run`
    const VoltPrices* prices = nullptr; ///< what the rest of the run costs at least
};

/// Sets the voltages between which a run is searched, from its supplies and lamps.
void frame_run(const SizeProblem& problem, const RunProblem& run, RunSearch& search);

/// Label-setting from the lamps to the head of a run.
RunLabels search_run(const SizeProblem& problem, const RunProblem& run, const RunSearch& search,
                     Effort& effort);

/// Least cost of the open lengths of a run, whatever the volts.
double least_cost(const SizeProblem& problem, const RunProblem& run);

} // namespace rillwatt::search
