#include "link_currents.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt {

namespace {

/// Volts of every node, run heads included, to one ampere drawn at `link.a` and fed in at `link.b`.
void find_response(const Network& network, const NetworkLink& link, Workspace& work, double* volts) {
    const auto count = network.node_count();
    auto& amps = work.response_amps;
    std::fill(amps.begin(), amps.end(), 0.0);
    amps[static_cast<std::size_t>(link.a)] += 1;
    amps[static_cast<std::size_t>(link.b)] -= 1;
    for (std::size_t i = count; i-- > 0;)
        amps[static_cast<std::size_t>(network.feed[i])] += amps[i] * work.branch_inverse[i];
    double load = 0;
    double slope = 0;
    for (std::size_t q = 0; q < network.run_count(); ++q) {
        load += network.tap[q] * amps[count + q];
        slope += network.tap[q] * network.tap[q] * work.carried_slope[count + q];
    }
    load /= kept_from_zero(1 + network.regulation_per_va * slope);
    for (std::size_t q = 0; q < network.run_count(); ++q)
        volts[count + q] = -network.tap[q] * network.regulation_per_va * load;
    for (std::size_t i = 0; i < count; ++i)
        volts[i] = (volts[static_cast<std::size_t>(network.feed[i])] - network.ohms[i] * amps[i]) *
                   work.branch_inverse[i];
}

/// `volts[a] - volts[b]`.
double across(const NetworkLink& link, const double* volts) {
    return volts[static_cast<std::size_t>(link.a)] - volts[static_cast<std::size_t>(link.b)];
}

/// A symmetric system as dense rows, with the place of each unknown kept through exchanges.
struct SymmetricSystem {
    std::size_t size;
    double* matrix;
    std::vector<double>& right;

    double& at(std::size_t i, std::size_t j) { return matrix[i * size + j]; }
};

void exchange(SymmetricSystem& system, std::vector<std::size_t>& order, std::size_t a, std::size_t b) {
    if (a == b) return;
    for (std::size_t j = 0; j < system.size; ++j)
        std::swap(system.at(a, j), system.at(b, j));
    for (std::size_t i = 0; i < system.size; ++i)
        std::swap(system.at(i, a), system.at(i, b));
    std::swap(system.right[a], system.right[b]);
    std::swap(order[a], order[b]);
}

std::size_t largest_diagonal(SymmetricSystem& system, std::size_t from) {
    std::size_t best = from;
    for (std::size_t i = from + 1; i < system.size; ++i)
        if (std::abs(system.at(i, i)) > std::abs(system.at(best, best))) best = i;
    return best;
}

/// Elimination with the largest diagonal first, which keeps the signs of the pivots those of the eigenvalues
/// (Sylvester's law of inertia). Leaves the solution in `right`, in exchanged order; returns how many pivots
/// are negative.
int eliminate(SymmetricSystem& system, std::vector<std::size_t>& order) {
    int negative = 0;
    for (std::size_t k = 0; k < system.size; ++k) {
        exchange(system, order, k, largest_diagonal(system, k));
        const double pivot = kept_from_zero(system.at(k, k));
        system.at(k, k) = pivot;
        negative += pivot < 0;
        for (std::size_t i = k + 1; i < system.size; ++i) {
            const double factor = system.at(i, k) / pivot;
            for (std::size_t j = k + 1; j < system.size; ++j)
                system.at(i, j) -= factor * system.at(k, j);
            system.right[i] -= factor * system.right[k];
        }
    }
    for (std::size_t k = system.size; k-- > 0;) {
        for (std::size_t j = k + 1; j < system.size; ++j)
            system.right[k] -= system.at(k, j) * system.right[j];
        system.right[k] /= system.at(k, k);
    }
    return negative;
}

} // namespace

int close_links(const Network& network, Workspace& work, NetworkSolution& solution) {
    const auto links = network.links.size();
    const auto slots = solution.node_volts.size();
    SymmetricSystem system{links, work.link_matrix.data(), work.link_right};
    for (std::size_t k = 0; k < links; ++k) {
        work.link_order[k] = k;
        find_response(network, network.links[k], work, &work.link_response[k * slots]);
        system.right[k] = across(network.links[k], solution.node_volts.data());
    }
    for (std::size_t i = 0; i < links; ++i)
        for (std::size_t k = 0; k < links; ++k)
            system.at(i, k) = (i == k ? network.links[i].ohms : 0) -
                              across(network.links[i], &work.link_response[k * slots]);
    const int negative = eliminate(system, work.link_order);
    for (std::size_t k = 0; k < links; ++k) {
        const double amps = system.right[k];
        const double* response = &work.link_response[work.link_order[k] * slots];
        solution.link_amps[work.link_order[k]] = amps;
        for (std::size_t i = 0; i < slots; ++i)
            solution.node_volts[i] += amps * response[i];
    }
    return negative;
}

} // namespace rillwatt
