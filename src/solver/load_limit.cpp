#include "rillwatt/solver/network.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

constexpr double share_tolerance = 1e-11; // relative
constexpr int halvings_limit = 200;       // a load may be any number of times too large
constexpr double tie_volts = 1e-6;

/// The network with all its loads multiplied by one factor.
void scale_loads(const Network& full, double share, Network& scaled) {
    const auto scale = [share](const std::vector<double>& from, std::vector<double>& to) {
        std::transform(from.begin(), from.end(), to.begin(), [share](double load) { return share * load; });
    };
    scale(full.power, scaled.power);
    scale(full.current, scaled.current);
    scale(full.conductance, scaled.conductance);
    for (std::size_t k = 0; k < full.filaments.size(); ++k)
        scaled.filaments[k].amps_at_rated = share * full.filaments[k].amps_at_rated;
}

/// Index into Network::lamps of the lamp with the lowest volts.
std::size_t lowest_lamp(const Network& network, const NetworkSolution& solution,
                        const std::vector<std::size_t>& file_order) {
    const auto volts = [&](std::size_t k) {
        return solution.lamp_volts[static_cast<std::size_t>(network.lamps[k])];
    };
    double lowest = volts(0);
    for (std::size_t k = 1; k < network.lamps.size(); ++k)
        lowest = std::min(lowest, volts(k));
    std::size_t first = network.lamps.size();
    for (std::size_t k = 0; k < network.lamps.size(); ++k) {
        if (volts(k) > lowest + tie_volts) continue;
        if (first == network.lamps.size() || file_order[k] < file_order[first]) first = k;
    }
    return first;
}

} // namespace

LoadLimit find_load_limit(const Network& network, const std::vector<std::size_t>& file_order) {
    Network scaled = network;
    Workspace workspace;
    NetworkSolution trial;
    if (network.lamps.empty()) return {};
    double carried = solve(scaled, workspace, trial) ? 1 : 0;
    double refused = 1;
    if (carried < 1) {
        scale_loads(network, carried, scaled);
        solve(scaled, workspace, trial);
    }
    NetworkSolution at_limit = trial;
    for (int i = 0; i < halvings_limit && refused - carried > share_tolerance * refused; ++i) {
        const double share = 0.5 * (carried + refused);
        scale_loads(network, share, scaled);
        // The volts at a smaller share lie above those at this one: a start as good as the open-circuit
        // volts.
        trial = at_limit;
        if (solve_from(scaled, workspace, trial)) {
            carried = share;
            at_limit = trial;
        } else {
            refused = share;
        }
    }
    const auto lamp = lowest_lamp(network, at_limit, file_order);
    const int node = network.lamps[lamp];
    return {carried, node, run_of_each_node(network)[static_cast<std::size_t>(node)]};
}

} // namespace rillwatt
