#include "rillwatt/search/problem.hpp"

#include "rillwatt/limits/standing.hpp"

#include <algorithm>

namespace rillwatt::search {

double RunProblem::open_metres() const {
    double metres = 0;
    for (const RunNode& node : nodes)
        if (node.typed < 0) metres += node.metres;
    return metres;
}

double RunProblem::longest_open() const {
    double longest = 0;
    for (const RunNode& node : nodes)
        if (node.typed < 0) longest = std::max(longest, node.metres);
    return longest;
}

bool RunProblem::has_open() const {
    return std::any_of(nodes.begin(), nodes.end(), [](const RunNode& node) { return node.typed < 0; });
}

std::vector<double> taps_for(const Model& model, const RunProblem& run) {
    if (run.tap) {
        for (const Volts tap : model.type->taps)
            if (tap.value() == *run.tap) return {*run.tap};
        return {};
    }
    std::vector<double> taps;
    for (const Volts tap : model.type->taps) {
        const Volts shown = tap * model.supply_ratio;
        if (at_most(shown, run.most_contact).broken()) continue;
        if (at_most(shown, run.most_unloaded.value_or(shown)).broken()) continue;
        taps.push_back(tap.value());
    }
    return taps;
}

} // namespace rillwatt::search
