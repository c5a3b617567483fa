#include "rillwatt/search/corridor.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt::search {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double safety = 1 - 2e-4;  ///< of a current between the two ends of a coarse cell
constexpr double least_width = 1e-9; ///< volts

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// What share of the lesser of two currents flows at least between the voltages they flow at: lamps draw
/// something between 1 / V and V, and of such sums (V + 1 / V) dips deepest.
double least_between(double left, double right) {
    const double ratio = std::sqrt(right / left);
    return 2 / (ratio + 1 / ratio);
}

/// A sum that remembers how many of its terms are infinite, so that terms can be taken out again.
struct Sum {
    double finite = 0;
    int infinite = 0;

    void add(double term) { term < infinity ? void(finite += term) : void(++infinite); }
    double value() const { return infinite > 0 ? infinity : finite; }
    double without(double term) const {
        if (infinite > (term < infinity ? 0 : 1)) return infinity;
        return term < infinity ? finite - term : finite;
    }
};

} // namespace

Corridor::Corridor(std::size_t nodes, double top)
    : top_(top), grids_(nodes + 1), feed_(nodes), reach_(nodes), draw_(nodes), rest_(nodes), joined_(nodes) {}

Corridor::Grid Corridor::grid_between(double least, double most) const {
    const double narrow = std::max((most - least) / narrow_cells, least_width);
    const double wide = std::max((top_ - most) / wide_cells, least_width);
    return {least, most, narrow, wide, 1 / narrow, 1 / wide};
}

/// The first cell of a coarse one.
std::size_t Corridor::first_of(std::size_t coarse) {
    constexpr std::size_t half = coarse_cells / 2;
    return coarse < half ? coarse * narrow_cells / half : narrow_cells + (coarse - half) * wide_cells / half;
}

void Corridor::record_draw(std::size_t node, const std::vector<Label>& labels) {
    const Grid grid = grids_[node] = grid_over(labels);
    Draw& draw = draw_[node];
    draw.va.fill(infinity);
    draw.amps.fill(infinity);
    for (const Label& label : labels) {
        const CurvePower power(label.curve);
        double left = label.low;
        double before = label.low * label.curve.amps[0];
        for (std::size_t k = 0; k < coarse_cells; ++k) {
            const double right = grid.left_of(first_of(k + 1));
            if (right < label.low) continue;
            const double here = power.at(right);
            draw.va[k] = std::min(draw.va[k], std::min(before, here) * safety);
            draw.amps[k] = std::min(draw.amps[k], std::min(before / left, here / right) *
                                                      least_between(left, right) * safety);
            before = here;
            left = right;
        }
    }
}

void Corridor::record_draw(std::size_t node, const std::vector<SteadyLabel>& labels) {
    grids_[node] = grid_over(labels);
    draw_[node].va.fill(0); // the amperes say it better
    draw_[node].amps.fill(labels.empty() ? infinity : labels.front().amps);
}

/// Over the cells of a node's own point.
Corridor::Table Corridor::least_amps(std::size_t node) const {
    Table amps(cells);
    for (std::size_t coarse = 0; coarse < coarse_cells; ++coarse)
        for (std::size_t k = first_of(coarse); k < first_of(coarse + 1); ++k)
            amps[k] =
                std::max(draw_[node].va[coarse] / grids_[node].left_of(k + 1), draw_[node].amps[coarse]);
    return amps;
}

/// Least cost of a node's cable and of everything beyond its feed point, over the volts at its own point.
Corridor::Table Corridor::above_point(const SizeProblem& problem, const RunNode& node, std::size_t index,
                                      const std::vector<int>& candidates) const {
    Table table(cells + 1, infinity);
    const Grid grid = grids_[index];
    const Grid feed = grids_[feed_[index]];
    const Table& rest = rest_[index];
    const Table amps = least_amps(index);
    const auto look = [&](int c) {
        const Cable& cable = problem.cables[at(c)];
        const double cost = node.typed < 0 ? cable.price * node.metres : 0;
        const double ohms = cable.ohms_per_metre * node.metres;
        for (std::size_t k = 0; k < cells; ++k)
            if (amps[k] <= cable.ampacity)
                table[k] = std::min(table[k], cost + rest[feed.cell_of(grid.left_of(k) + ohms * amps[k])]);
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
    const Grid& grid = grids_.back();
    for (const Supply& supply : supplies)
        for (std::size_t k = 0; k <= cells && grid.left_of(k) <= supply.volts + volts_rounding; ++k)
            table[k] = std::min(table[k], supply.price - supplies.front().price);
    return table;
}

/// Least cost of a node's subtree with its cable, at the upper end of each cell of its feed point.
Corridor::Table Corridor::reach_over(const Grid& grid, std::size_t node) const {
    Table table(cells + 1, infinity);
    const std::vector<Step>& steps = reach_[node];
    std::size_t next = 0;
    for (std::size_t k = 0; k <= cells; ++k) {
        const double right = grid.left_of(k + 1) + volts_rounding;
        while (next < steps.size() && steps[next].low <= right)
            ++next;
        if (next > 0) table[k] = steps[next - 1].cost;
    }
    return table;
}

void Corridor::close_point(std::size_t point, const std::vector<std::size_t>& fed, const Table& above) {
    std::vector<Table> reach;
    std::vector<Sum> together(cells + 1);
    for (const std::size_t child : fed) {
        reach.push_back(reach_over(grids_[point], child));
        for (std::size_t k = 0; k <= cells; ++k)
            together[k].add(reach.back()[k]);
    }
    std::vector<Sum> before(cells + 1);
    for (std::size_t c = 0; c < fed.size(); ++c) {
        Table& rest = rest_[fed[c]];
        Table& joined = joined_[fed[c]];
        rest.assign(cells + 2, infinity);
        joined.assign(cells + 2, infinity);
        for (std::size_t k = cells + 1; k-- > 0;) {
            rest[k] = std::min(rest[k + 1], together[k].without(reach[c][k]) + above[k]);
            joined[k] = std::min(joined[k + 1], before[k].value() + above[k]);
            before[k].add(reach[c][k]);
        }
    }
}

void Corridor::close(const SizeProblem& problem, const RunProblem& run, const std::vector<int>& candidates,
                     const std::vector<Supply>& supplies) {
    if (closed_) return;
    closed_ = true;
    const std::size_t count = run.nodes.size();
    std::vector<std::vector<std::size_t>> fed(count + 1); // last: the head
    for (std::size_t i = 0; i < count; ++i) {
        feed_[i] = run.nodes[i].parent < 0 ? count : at(run.nodes[i].parent);
        fed[feed_[i]].push_back(i);
    }
    if (!fed[count].empty()) close_point(count, fed[count], above_head(supplies));
    for (std::size_t i = 0; i < count; ++i) // feeds before what they feed
        if (!fed[i].empty()) close_point(i, fed[i], above_point(problem, run.nodes[i], i, candidates));
}

} // namespace rillwatt::search
