#include "rillwatt/search/stairs.hpp"

#include <algorithm>

namespace rillwatt::search {

namespace {

bool needs_less(double low, const Stairs::StepDown& step) { return low < step.low; }

} // namespace

const Stairs::StepDown* Stairs::least_amps(double low) const {
    const auto after = std::upper_bound(steps_.begin(), steps_.end(), low, needs_less);
    return after == steps_.begin() ? nullptr : &*std::prev(after);
}

void Stairs::add(const StepDown& step) {
    const auto first = std::lower_bound(steps_.begin(), steps_.end(), step.low,
                                        [](const StepDown& s, double low) { return s.low < low; });
    if (first != steps_.begin() && std::prev(first)->amps <= step.amps) return;
    auto last = first;
    while (last != steps_.end() && last->amps >= step.amps)
        ++last;
    if (first == last) {
        steps_.insert(first, step);
        return;
    }
    *first = step;
    steps_.erase(first + 1, last);
}

} // namespace rillwatt::search
