#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

namespace rillwatt::search {

/// Sorts what consists of a few ascending stretches by merging these. `spare` is only memory to work in.
template<class T>
void sort_runs(std::vector<T>& items, std::vector<T>& spare) {
    std::vector<std::size_t> starts{0};
    for (std::size_t i = 1; i < items.size(); ++i)
        if (items[i] < items[i - 1]) starts.push_back(i);
    starts.push_back(items.size());
    spare.resize(items.size());
    while (starts.size() > 2) {
        std::vector<std::size_t> merged;
        for (std::size_t s = 0; s + 1 < starts.size(); s += 2) {
            const auto place = [&](std::size_t k) {
                return items.begin() + static_cast<std::ptrdiff_t>(starts[std::min(k, starts.size() - 1)]);
            };
            merged.push_back(starts[s]);
            std::merge(place(s), place(s + 1), place(s + 1), place(s + 2),
                       spare.begin() + static_cast<std::ptrdiff_t>(starts[s]));
        }
        merged.push_back(items.size());
        items.swap(spare);
        starts.swap(merged);
    }
}

} // namespace rillwatt::search
