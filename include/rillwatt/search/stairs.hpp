#pragma once

#include <cstddef>
#include <vector>

namespace rillwatt::search {

/// Labels that were kept, as steps going down: the more volts a step needs, the fewer amperes it draws. What
/// lies above a step is left out, so a look at one step answers for all of them.
class Stairs {
  public:
    struct StepDown {
        double low = 0;
        double amps = 0;
        std::size_t label = 0;
    };

    /// The step that draws least among those that need no more than `low`; null when there is none.
    const StepDown* least_amps(double low) const;

    void add(const StepDown& step);

  private:
    std::vector<StepDown> steps_; ///< by ascending volts, descending amperes
};

} // namespace rillwatt::search
