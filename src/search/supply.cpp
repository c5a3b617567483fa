#include "rillwatt/search/supply.hpp"

#include "rillwatt/limits/standing.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rillwatt::search {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

double most_ohms_per_metre(const SizeProblem& problem) {
    double most = 0;
    for (const int c : problem.candidates)
        most = std::max(most, problem.cables[at(c)].ohms_per_metre);
    return most;
}

/// Volts at the head of a run beyond which some lamp leaves its window, with the most drop there can be to
/// it.
double bearable_volts(const SizeProblem& problem, const RunProblem& run) {
    const double open_ohms = most_ohms_per_metre(problem);
    const std::size_t count = run.nodes.size();
    const std::vector<double> amps = most_amps(run);
    double volts = std::numeric_limits<double>::infinity();
    std::vector<double> drop(count, 0);
    for (std::size_t i = 0; i < count; ++i) {
        const RunNode& node = run.nodes[i];
        const double ohms = node.typed < 0 ? open_ohms : problem.cables[at(node.typed)].ohms_per_metre;
        drop[i] = (node.parent < 0 ? 0 : drop[at(node.parent)]) + ohms * node.metres * amps[i];
        if (node.lamp) volts = std::min(volts, splice_volts(*node.lamp, node.lamp->high) + drop[i]);
    }
    return volts;
}

} // namespace

double sag_at_limit(const Model& model, double loading) {
    return sag_under(model, most_va(*model.type, loading));
}

std::vector<double> bearable_taps(const SizeProblem& problem, const Model& model, const RunProblem& run) {
    constexpr double rounding = 1e-9;
    const double most =
        bearable_volts(problem, run) * (1 + rounding) / sag_at_limit(model, problem.options.loading);
    std::vector<double> taps = taps_for(model, run);
    std::erase_if(taps, [&](double tap) { return tap > most; });
    return taps;
}

std::vector<double> most_amps(const RunProblem& run) {
    std::vector<double> amps(run.nodes.size(), 0);
    for (std::size_t i = run.nodes.size(); i-- > 0;) {
        const RunNode& node = run.nodes[i];
        if (node.lamp)
            amps[i] +=
                std::max(amps_at_lamp(*node.lamp, node.lamp->low), amps_at_lamp(*node.lamp, node.lamp->high));
        if (node.parent >= 0) amps[at(node.parent)] += amps[i];
    }
    return amps;
}

std::vector<double> least_amps(const RunProblem& run, Supplied supplied, double top) {
    std::vector<double> amps(run.nodes.size(), 0);
    for (std::size_t i = run.nodes.size(); i-- > 0;) {
        const RunNode& node = run.nodes[i];
        if (const auto& lamp = node.lamp_in(supplied)) {
            const double low = amps_at_lamp(*lamp, lamp->low);
            const double high = std::min(splice_volts(*lamp, lamp->high), top);
            // where there is no current at that voltage there is none at any that the lamp can get
            amps[i] += std::min(low, amps_at_splice(*lamp, high).value_or(low));
        }
        if (node.parent >= 0) amps[at(node.parent)] += amps[i];
    }
    return amps;
}

double most_amps_at_head(const RunProblem& run) {
    const std::vector<double> amps = most_amps(run);
    double sum = 0;
    for (std::size_t i = 0; i < amps.size(); ++i)
        if (run.nodes[i].parent < 0) sum += amps[i];
    return sum;
}

double least_lamp_va(const TransformerProblem& transformer, Supplied supplied) {
    double va = 0;
    for (const RunProblem& run : transformer.runs)
        for (const RunNode& node : run.nodes) {
            if (!node.lamp) continue;
            const WindowedLamp& lamp = *node.lamp_in(supplied);
            va +=
                std::min(lamp.low * amps_at_lamp(lamp, lamp.low), lamp.high * amps_at_lamp(lamp, lamp.high));
        }
    return va;
}

bool carries(const Model& model, double va, double loading) {
    constexpr double rounding = 1e-9;
    return va <= most_va(*model.type, loading) * (1 + rounding);
}

double sag_under(const Model& model, double va, Supplied supplied) {
    // sag = s - g / VA * (va / sag), the upper root
    const double ratio = model.ratio_in(supplied);
    const double inside = ratio * ratio - 4 * model.type->regulation * va / model.type->va.value();
    return inside <= 0 ? ratio / 2 : (ratio + std::sqrt(inside)) / 2;
}

std::vector<Supply> supplies_of(const SizeProblem& problem, const TransformerProblem& transformer,
                                const RunProblem& run) {
    constexpr double rounding = 1e-9;
    const double va = least_lamp_va(transformer);
    const double weak_va = problem.weak ? least_lamp_va(transformer, Supplied::weak) : 0;
    const auto weak_volts = [&](const Model& model, double tap) {
        return problem.weak ? tap * sag_under(model, weak_va, Supplied::weak) * (1 + rounding) : 0;
    };
    std::vector<Supply> supplies;
    for (const Model& model : transformer.models) {
        if (!carries(model, va, problem.options.loading)) continue;
        const std::vector<double> taps = bearable_taps(problem, model, run);
        if (taps.empty()) continue;
        const double tap = *std::max_element(taps.begin(), taps.end());
        supplies.push_back({model.price, tap * sag_under(model, va) * (1 + rounding),
                            model.type->secondary_limit.value(), weak_volts(model, tap)});
    }
    return supplies; // models come by ascending price
}

} // namespace rillwatt::search
