#include "corridor.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt::sizing {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr std::size_t cells = 1024;
constexpr std::size_t coarse_cells = 16;
constexpr double safety = 1 - 2e-4; ///< of a current between the two ends of a coarse cell

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// A sum that remembers how many of its terms are infinite, so that terms can be taken out again.
struct Sum {
    double finite = 0;
    int infinite = 0;

    void add(double term) { term < infinity ? void(finite += term) : void(++infinite); }
    double without(double term) const {
        if (infinite > (term < infinity ? 0 : 1)) return infinity;
        return term < infinity ? finite - term : finite;
    }
};

} // namespace

Corridor::Corridor(std::size_t nodes, double floor, double top)
    : floor_(floor), width_(std::max(top - floor, 1e-9) / cells), reach_(nodes), draw_(nodes), rest_(nodes) {}

std::size_t Corridor::cell_of(double volts) const {
    const double place = (volts - floor_) / width_ - 1e-6;
    return place <= 0 ? 0 : std::min(static_cast<std::size_t>(place), cells);
}

void Corridor::record_reach(std::size_t node, const std::vector<Label>& labels) {
    Table& table = reach_[node];
    table.assign(cells + 1, infinity);
    for (const Label& label : labels) {
        double& least = table[cell_of(label.low)];
        least = std::min(least, label.cost);
    }
    for (std::size_t k = 1; k <= cells; ++k)
        table[k] = std::min(table[k], table[k - 1]);
}

void Corridor::record_draw(std::size_t node, const std::vector<Label>& labels) {
    Table& table = draw_[node];
    table.assign(coarse_cells, infinity);
    const double coarse = width_ * cells / coarse_cells;
    for (const Label& label : labels) {
        const CurvePower power(label.curve);
        double before = label.low * label.curve.amps[0];
        for (std::size_t k = 0; k < coarse_cells; ++k) {
            const double right = floor_ + coarse * static_cast<double>(k + 1);
            if (right < label.low) continue;
            const double here = power.at(right);
            table[k] = std::min(table[k], std::min(before, here) * safety);
            before = here;
        }
    }
}

double Corridor::least_amps(std::size_t node, std::size_t cell) const {
    return draw_[node][std::min(cell * coarse_cells / cells, coarse_cells - 1)] / left(cell + 1);
}

/// Least cost of a node's cable and of everything beyond its feed point, over the volts at its own point.
Corridor::Table Corridor::above_point(const SizeProblem& problem, const RunNode& node, std::size_t index,
                                      const std::vector<int>& candidates) const {
    Table table(cells + 1, infinity);
    const auto look = [&](int c) {
        const Cable& cable = problem.cables[at(c)];
        const double cost = node.typed < 0 ? cable.price * node.metres : 0;
        const double ohms = cable.ohms_per_metre * node.metres;
        for (std::size_t k = 0; k < cells; ++k) {
            const double amps = least_amps(index, k);
            if (amps == infinity) continue;
            table[k] = std::min(table[k], cost + rest(index, left(k) + ohms * amps));
        }
    };
    if (node.typed >= 0)
        look(node.typed);
    else
        for (const int c : candidates)
            look(c);
    return table;
}

/// What more than the cheapest model a model costs that gives the volts at the head.
Corridor::Table Corridor::above_head(const std::vector<Supply>& supplies) const {
    Table table(cells + 1, infinity);
    for (const Supply& supply : supplies)
        for (std::size_t k = 0; k <= cells && left(k) <= supply.volts; ++k)
            table[k] = std::min(table[k], supply.price - supplies.front().price);
    return table;
}

void Corridor::close(const SizeProblem& problem, const RunProblem& run, const std::vector<int>& candidates,
                     const std::vector<Supply>& supplies) {
    const std::size_t count = run.nodes.size();
    std::vector<std::vector<std::size_t>> fed(count + 1); // last: the head
    for (std::size_t i = 0; i < count; ++i)
        fed[run.nodes[i].parent < 0 ? count : at(run.nodes[i].parent)].push_back(i);
    closed_ = true;
    for (std::size_t step = 0; step <= count; ++step) {
        const std::size_t point =
            step == 0 ? count : step - 1; // the head first, then feeds before what they feed
        if (fed[point].empty()) continue;
        Table above =
            point == count ? above_head(supplies) : above_point(problem, run.nodes[point], point, candidates);
        std::vector<Sum> together(cells + 1);
        for (const std::size_t child : fed[point])
            for (std::size_t k = 0; k <= cells; ++k)
                together[k].add(reach_[child][k]);
        for (const std::size_t child : fed[point]) {
            Table& table = rest_[child];
            table.assign(cells + 2, infinity);
            for (std::size_t k = cells + 1; k-- > 0;)
                table[k] = std::min(table[k + 1], together[k].without(reach_[child][k]) + above[k]);
        }
    }
}

double Corridor::rest(std::size_t node, double low) const {
    const Table& table = rest_[node];
    return table.empty() ? 0 : table[cell_of(low)];
}

} // namespace rillwatt::sizing
