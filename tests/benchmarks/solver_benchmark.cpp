// Prints what a solve in process costs: 100,000 lamps in runs of 25, and smaller gardens to show that the
// cost grows with the lamps and nothing else; then a garden of rings and the search for a limit.

#include "rillwatt/solver/network.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <ctime>

using namespace rillwatt;

namespace {

constexpr int lamps_per_run = 25;
constexpr int repeats = 21;

struct Load {
    const char* name;
    double power = 0;
    double filament_amps = 0;
};

void add_node(Network& network, int feed, double ohms, const Load* load) {
    const int node = static_cast<int>(network.node_count());
    network.feed.push_back(feed);
    network.ohms.push_back(ohms);
    network.lead_ohms.push_back(load ? 0.1 : 0);
    network.power.push_back(load ? load->power : 0);
    network.current.push_back(0);
    network.conductance.push_back(0);
    if (!load) return;
    network.lamps.push_back(node);
    if (load->filament_amps > 0) network.filaments.push_back({node, load->filament_amps, 12});
}

/// One transformer of 4 % regulation with chains of 25 lamps: 6 m to the first, 2 m between lamps of 12 AWG.
Network garden(int runs, const Load& load) {
    constexpr double ohms_per_metre = 2 * 0.0065;
    Network network;
    for (int q = 0; q < runs; ++q) {
        add_node(network, runs * (lamps_per_run + 1) + q, 0, nullptr);
        network.run_node.push_back(q);
        network.tap.push_back(12 + q % 3);
    }
    for (int k = 0; k < lamps_per_run; ++k)
        for (int q = 0; q < runs; ++q)
            add_node(network, runs * k + q, (k == 0 ? 6 : 2) * ohms_per_metre, &load);
    network.regulation_per_va = 0.04 / (150 * runs);
    return network;
}

struct Timing {
    double milliseconds = 0;
    double residual = 0;
    int iterations = 0;
};

/// Processor time of this program so far, which other programs on the machine do not add to.
double processor_milliseconds() { return 1e3 * static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

/// Median processor time of solving every network, each from its open-circuit volts.
Timing time_solves(const std::vector<Network>& networks) {
    Workspace workspace;
    NetworkSolution solution;
    std::vector<double> times;
    Timing timing;
    for (int k = 0; k < repeats; ++k) {
        const double start = processor_milliseconds();
        for (const Network& network : networks) {
            if (!solve(network, workspace, solution)) std::abort();
            timing.residual = std::max(timing.residual, solution.residual_volts);
            timing.iterations = std::max(timing.iterations, solution.iterations);
        }
        times.push_back(processor_milliseconds() - start);
    }
    std::nth_element(times.begin(), times.begin() + repeats / 2, times.end());
    timing.milliseconds = times[repeats / 2];
    return timing;
}

void report(const char* what, int lamps, const Timing& timing) {
    fmt::print("{:<52} {:>7} lamps {:>9.3f} ms {:>6.1f} ns/lamp  {} steps  residual {:.1e} V\n", what, lamps,
               timing.milliseconds, timing.milliseconds * 1e6 / lamps, timing.iterations, timing.residual);
}

void time_gardens(const Load& load) {
    for (const int transformers : {10, 100, 1000}) {
        const std::vector<Network> networks(static_cast<std::size_t>(transformers), garden(4, load));
        report(fmt::format("{}, transformers of 4 runs of 25", load.name).c_str(),
               transformers * 4 * lamps_per_run, time_solves(networks));
    }
    report(fmt::format("{}, one transformer of 4000 runs of 25", load.name).c_str(), 4000 * lamps_per_run,
           time_solves({garden(4000, load)}));
}

/// Chains on a transformer each, without their neighbours' company in the pipeline: the worst order there is.
void time_single_runs(const Load& load) {
    const std::vector<Network> networks(4000, garden(1, load));
    report(fmt::format("{}, transformers of one run of 25", load.name).c_str(), 4000 * lamps_per_run,
           time_solves(networks));
}

void time_rings(const Load& load) {
    Network network = garden(4, load);
    for (int q = 0; q < 4; ++q)
        network.links.push_back({4 * lamps_per_run + q, q, 0.3});
    report("constant power, every run closed to a ring", 100000,
           time_solves(std::vector<Network>(1000, network)));
}

void time_limit(const Load& load) {
    Network network = garden(4, load);
    for (double& power : network.power)
        power *= 40;
    std::vector<std::size_t> order(network.lamps.size());
    for (std::size_t k = 0; k < order.size(); ++k)
        order[k] = k;
    const double start = processor_milliseconds();
    const LoadLimit limit = find_load_limit(network, order);
    fmt::print("limit of 100 overloaded lamps: {:.3f} ms, share {:.10f}\n", processor_milliseconds() - start,
               limit.share);
}

} // namespace

int main() {
    const Load power{"constant power", 2, 0};
    const Load filament{"filament", 0, 0.17};
    time_gardens(power);
    time_single_runs(power);
    time_gardens(filament);
    time_rings(power);
    time_limit(power);
}
