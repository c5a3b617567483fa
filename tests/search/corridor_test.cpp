#include "rillwatt/search/corridor.hpp"
#include "rillwatt/search/run_labels.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <optional>
#include <random>

using namespace rillwatt;
using namespace rillwatt::search;

namespace {

/// A small run, and every way to cable it.
class SmallRun {
  public:
    explicit SmallRun(unsigned seed) : random_(seed) {
        problem.cables = {cable(0.021, 1.0, 3.2, 0), cable(0.0132, 1.7, 5.5, 1), cable(0.0052, 3.1, 20, 2)};
        problem.candidates = {0, 1, 2};
        const int nodes = 3 + static_cast<int>(random_() % 3);
        const bool steady = random_() % 2 == 0;
        for (int i = 0; i < nodes; ++i)
            run.nodes.push_back(node(i, steady));
        supplies = {{100, 11.6 + between(0, 0.3)}, {130, 12.4 + between(0, 0.3)}};
    }

    /// Volts at each node with these cables; empty where a lamp leaves its window or a cable is overloaded.
    std::optional<std::vector<double>> solved(const std::vector<int>& cables, double head) const {
        std::vector<double> volts(run.nodes.size(), head);
        std::vector<double> amps;
        for (int sweep = 0; sweep < 60; ++sweep) {
            amps.assign(run.nodes.size(), 0.0);
            for (std::size_t i = run.nodes.size(); i-- > 0;) {
                if (run.nodes[i].lamp) {
                    const std::optional<double> drawn = amps_at_splice(*run.nodes[i].lamp, volts[i]);
                    if (!drawn) return std::nullopt;
                    amps[i] += *drawn;
                }
                if (run.nodes[i].parent >= 0) amps[static_cast<std::size_t>(run.nodes[i].parent)] += amps[i];
            }
            for (std::size_t i = 0; i < run.nodes.size(); ++i)
                volts[i] =
                    fed_with(volts, i, head) - of(cables[i]).ohms_per_metre * run.nodes[i].metres * amps[i];
        }
        for (std::size_t i = 0; i < run.nodes.size(); ++i) {
            const auto& lamp = run.nodes[i].lamp;
            if (amps[i] > of(cables[i]).ampacity) return std::nullopt;
            if (lamp &&
                (volts[i] < splice_volts(*lamp, lamp->low) || volts[i] > splice_volts(*lamp, lamp->high)))
                return std::nullopt;
        }
        return volts;
    }

    double fed_with(const std::vector<double>& volts, std::size_t i, double head) const {
        return run.nodes[i].parent < 0 ? head : volts[static_cast<std::size_t>(run.nodes[i].parent)];
    }

    /// What the subtree of each node costs, its own cable included.
    std::vector<double> costs(const std::vector<int>& cables) const {
        std::vector<double> cost(run.nodes.size(), 0.0);
        for (std::size_t i = run.nodes.size(); i-- > 0;) {
            cost[i] += of(cables[i]).price * run.nodes[i].metres;
            if (run.nodes[i].parent >= 0) cost[static_cast<std::size_t>(run.nodes[i].parent)] += cost[i];
        }
        return cost;
    }

    SizeProblem problem;
    RunProblem run;
    std::vector<Supply> supplies;

  private:
    static Cable cable(double ohms_per_metre, double price, double ampacity, int thickness) {
        Cable made;
        made.ohms_per_metre = ohms_per_metre;
        made.price = price;
        made.ampacity = ampacity;
        made.thickness = thickness;
        return made;
    }

    RunNode node(int index, bool steady) {
        constexpr LoadModel models[] = {LoadModel::constant_power, LoadModel::constant_current,
                                        LoadModel::filament, LoadModel::resistance};
        RunNode made;
        made.node = index;
        made.parent = index == 0 ? -1 : static_cast<int>(random_() % static_cast<unsigned>(index + 1)) - 1;
        made.metres = between(3, 18);
        if (index > 0 || random_() % 2 == 0) {
            WindowedLamp& lamp = made.lamp.emplace();
            lamp.model = steady ? LoadModel::constant_current : models[random_() % 4];
            lamp.power = between(3, 25);
            lamp.rated = 12;
            lamp.low = between(10.4, 11);
            lamp.high = 15;
            lamp.lead_ohms = random_() % 2 == 0 ? 0 : between(0.01, 0.06);
        }
        return made;
    }

    const Cable& of(int cable) const { return problem.cables[static_cast<std::size_t>(cable)]; }

    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(random_()) / 4294967296.0;
    }

    std::mt19937 random_;
};

Corridor recorded(const SmallRun& small) {
    RunSearch search{.per_length = true, .any_order = true, .supplies = small.supplies};
    frame_run(small.problem, small.run, search);
    search.frame.relax = true;
    search.frame.tolerance = 1e-3;
    Corridor corridor(small.run.nodes.size(), search.frame.top);
    search.record = &corridor;
    Effort effort(1'000'000, {});
    search_run(small.problem, small.run, search, effort);
    corridor.close(small.problem, small.run, small.problem.candidates, small.supplies);
    return corridor;
}

/// The least head volts that these cables do with, once `most` does.
double least_head(const SmallRun& small, const std::vector<int>& cables, double most) {
    double least = 0;
    for (int step = 0; step < 40; ++step) {
        const double middle = (least + most) / 2;
        (small.solved(cables, middle) ? most : least) = middle;
    }
    return most;
}

/// Whether the corridor asks at most what this way to cable the run costs beside each of its parts; counts
/// where it asks just that.
void compare(const SmallRun& small, const Corridor& corridor, const std::vector<int>& cables, double head,
             double supply_cost, int& met) {
    constexpr double rounding = 1e-9;
    const std::optional<std::vector<double>> volts = small.solved(cables, head);
    REQUIRE(volts);
    const std::vector<double> cost = small.costs(cables);
    double total = supply_cost;
    for (std::size_t i = 0; i < cost.size(); ++i)
        if (small.run.nodes[i].parent < 0) total += cost[i];
    for (std::size_t i = 0; i < cost.size(); ++i) {
        double later = 0; // siblings that come after it
        for (std::size_t k = i + 1; k < cost.size(); ++k)
            if (small.run.nodes[k].parent == small.run.nodes[i].parent) later += cost[k];
        const double feed = small.fed_with(*volts, i, head);
        const double rest = total - cost[i];
        const double asked = corridor.rest(i, feed);
        const double joined = corridor.rest_when_joined(i, feed);
        if (asked > rest + rounding) FAIL_CHECK("node " << i << " asks " << asked << " of " << rest);
        if (joined > rest - later + rounding) FAIL_CHECK("node " << i << " joined asks " << joined);
        if (asked > rest - rounding) ++met;
    }
}

/// The next of all ways to choose among three cables; false after the last.
bool advance(std::vector<int>& cables) {
    for (int& cable : cables) {
        if (++cable < 3) return true;
        cable = 0;
    }
    return false;
}

} // namespace

TEST_CASE("a corridor asks no more of the rest of a run than any way to cable it costs") {
    int ways = 0;
    int met = 0;
    for (unsigned seed = 1; seed <= 40; ++seed) {
        INFO("seed " << seed);
        const SmallRun small(seed);
        const Corridor corridor = recorded(small);
        std::vector<int> cables(small.run.nodes.size(), 0);
        do {
            for (const Supply& supply : small.supplies) {
                if (!small.solved(cables, supply.volts)) continue;
                const double supply_cost = supply.price - small.supplies.front().price;
                compare(small, corridor, cables, supply.volts, supply_cost, met);
                if (++ways % 4 == 0) // where some lamp has just what it needs
                    compare(small, corridor, cables, least_head(small, cables, supply.volts), supply_cost,
                            met);
            }
        } while (advance(cables));
    }
    CHECK(ways > 1000);
    CHECK(met > ways / 20); // else it would say nothing
}
