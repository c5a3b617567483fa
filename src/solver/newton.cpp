#include "rillwatt/circuit/lamp_load.hpp"
#include "rillwatt/solver/network.hpp"

#include "link_currents.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt {

namespace {

constexpr double dark_volts = 1e-30; // below it a filament counts as the resistance it is there
constexpr int step_limit = 200;      // Newton's halves its distance at the very least; 60 reach the last bit
constexpr int first_chords = 8;      // in the first round along chords; each round has twice as many
constexpr int chord_limit = 1024;    // in the last

/// Tangent to a filament's current, or the chord from zero to it, which lies below it.
enum class FilamentLine { tangent, chord };

/// What a step did.
struct Step {
    bool sound = false; ///< the linearised circuit is stable and every volt positive
    double size = 0;    ///< largest change of a lamp's volts
};

/// Current over volts.
double filament_conductance(const FilamentLoad& lamp, double volts) {
    const double lit = std::max(volts, dark_volts);
    return filament_amps(lamp.amps_at_rated, lamp.rated_volts, lit) / lit;
}

/// Adds the filaments' lines to the constant currents and conductances.
void linearise_filaments(const Network& network, FilamentLine line, Workspace& work,
                         const std::vector<double>& lamp_volts) {
    std::copy(network.current.begin(), network.current.end(), work.fixed_amps.begin());
    std::copy(network.conductance.begin(), network.conductance.end(), work.fixed_slope.begin());
    for (const FilamentLoad& lamp : network.filaments) {
        const auto i = static_cast<std::size_t>(lamp.node);
        const double conductance = filament_conductance(lamp, lamp_volts[i]);
        const double share = line == FilamentLine::tangent ? filament_exponent : 1;
        work.fixed_slope[i] += share * conductance;
        work.fixed_amps[i] += (1 - share) * conductance * lamp_volts[i];
    }
}

/// A lamp as the splice sees it through its lead: `amps + slope * splice volts`.
struct LampLine {
    double pivot; ///< sign of `1 + lead * slope at the lamp`
    double inverse;
    double amps;
    double slope;
};

/// Tangent of the load columns, filaments linearised: `power / V + fixed_amps + fixed_slope * V`, the lead
/// eliminated. A constant-power lamp takes
/// all of it times V^2, which saves a division.
inline LampLine line_of(double power, double fixed_amps, double fixed_slope, double lead, double volts) {
    if (power > 0) {
        const double square = volts * volts;
        const double slope = fixed_slope * square - power;
        const double pivot = square + lead * slope;
        const double inverse = 1 / kept_from_zero(pivot);
        return {pivot, square * inverse, (fixed_amps * square + 2 * power * volts) * inverse,
                slope * inverse};
    }
    const double inverse = 1 / (1 + lead * fixed_slope);
    return {1, inverse, fixed_amps * inverse, fixed_slope * inverse};
}

/// Backward: reduces every subtree to amperes and slope as its feed sees it. Returns how many pivots are not
/// positive.
int reduce_subtrees(const Network& network, Workspace& work, const std::vector<double>& lamp_volts) {
    const bool plain = network.filaments.empty();
    const double* fixed_amps = plain ? network.current.data() : work.fixed_amps.data();
    const double* fixed_slope = plain ? network.conductance.data() : work.fixed_slope.data();
    std::fill(work.carried_amps.begin(), work.carried_amps.end(), 0.0);
    std::fill(work.carried_slope.begin(), work.carried_slope.end(), 0.0);
    int not_positive = 0;
    for (std::size_t i = network.node_count(); i-- > 0;) {
        const double lead = network.lead_ohms[i];
        const LampLine lamp = line_of(network.power[i], fixed_amps[i], fixed_slope[i], lead, lamp_volts[i]);
        const double subtree_amps = work.carried_amps[i] + lamp.amps;
        const double subtree_slope = work.carried_slope[i] + lamp.slope;
        const double pivot = 1 + network.ohms[i] * subtree_slope;
        const double inverse = 1 / kept_from_zero(pivot);
        not_positive += (lamp.pivot <= 0) + (pivot <= 0);
        work.lead_volts[i] = lead * lamp.amps;
        work.lamp_inverse[i] = lamp.inverse;
        work.carried_amps[i] = subtree_amps;
        work.branch_inverse[i] = inverse;
        const auto feed = static_cast<std::size_t>(network.feed[i]);
        work.carried_amps[feed] += subtree_amps * inverse;
        work.carried_slope[feed] += subtree_slope * inverse;
    }
    return not_positive;
}

/// The series impedance of the transformer joins its runs: one scalar equation for the sum of tap volts times
/// amperes. Sets the volts at the run heads and returns its pivot.
double join_runs(const Network& network, const Workspace& work, std::vector<double>& node_volts) {
    const auto count = network.node_count();
    double amps = 0;
    double slope = 0;
    for (std::size_t q = 0; q < network.run_count(); ++q) {
        amps += network.tap[q] * work.carried_amps[count + q];
        slope += network.tap[q] * network.tap[q] * work.carried_slope[count + q];
    }
    const double pivot = 1 + network.regulation_per_va * slope;
    const double load = (amps + network.supply_ratio * slope) / kept_from_zero(pivot);
    const double volts_per_tap = network.supply_ratio - network.regulation_per_va * load;
    for (std::size_t q = 0; q < network.run_count(); ++q)
        node_volts[count + q] = network.tap[q] * volts_per_tap;
    return pivot;
}

/// Forward: volts of every node from those of its feed.
void spread_volts(const Network& network, const Workspace& work, std::vector<double>& node_volts) {
    for (std::size_t i = 0; i < network.node_count(); ++i)
        node_volts[i] =
            (node_volts[static_cast<std::size_t>(network.feed[i])] - network.ohms[i] * work.carried_amps[i]) *
            work.branch_inverse[i];
}

/// Volts after each lead; says how far they moved.
Step move_lamps(const Network& network, const Workspace& work, NetworkSolution& solution) {
    double size = 0;
    bool sound = true;
    for (std::size_t i = 0; i < network.node_count(); ++i) {
        const double volts = solution.node_volts[i] * work.lamp_inverse[i] - work.lead_volts[i];
        size = std::max(size, std::abs(volts - solution.lamp_volts[i]));
        // Written so that what is no number is not sound either.
        sound &= volts >= 0 && (volts > 0 || network.power[i] + network.current[i] == 0);
        solution.lamp_volts[i] = volts;
    }
    return {sound, size};
}

Step newton_step(const Network& network, FilamentLine line, Workspace& work, NetworkSolution& solution) {
    ++solution.iterations;
    if (!network.filaments.empty()) linearise_filaments(network, line, work, solution.lamp_volts);
    int not_positive = reduce_subtrees(network, work, solution.lamp_volts);
    if (not_positive > 0 && network.links.empty()) return {};
    if (join_runs(network, work, solution.node_volts) <= 0) ++not_positive;
    if (not_positive > 0 && network.links.empty()) return {};
    spread_volts(network, work, solution.node_volts);
    if (!network.links.empty() && close_links(network, work, solution) != not_positive) return {};
    return move_lamps(network, work, solution);
}

/// Currents by Kirchhoff's first law from the lamps' volts.
void sum_currents(const Network& network, NetworkSolution& solution) {
    for (std::size_t i = 0; i < network.node_count(); ++i) {
        const double volts = solution.lamp_volts[i];
        const double power = network.power[i];
        solution.lamp_amps[i] =
            (power > 0 ? power / volts : 0) + network.current[i] + network.conductance[i] * volts;
    }
    for (const FilamentLoad& lamp : network.filaments) {
        const auto i = static_cast<std::size_t>(lamp.node);
        solution.lamp_amps[i] += filament_conductance(lamp, solution.lamp_volts[i]) * solution.lamp_volts[i];
    }
    const auto count = network.node_count();
    std::copy(solution.lamp_amps.begin(), solution.lamp_amps.end(), solution.branch_amps.begin());
    std::fill(solution.run_amps.begin(), solution.run_amps.end(), 0.0);
    for (std::size_t k = 0; k < network.links.size(); ++k) {
        solution.branch_amps[static_cast<std::size_t>(network.links[k].a)] += solution.link_amps[k];
        solution.branch_amps[static_cast<std::size_t>(network.links[k].b)] -= solution.link_amps[k];
    }
    for (std::size_t i = count; i-- > 0;) {
        const auto feed = static_cast<std::size_t>(network.feed[i]);
        (feed < count ? solution.branch_amps[feed] : solution.run_amps[feed - count]) +=
            solution.branch_amps[i];
    }
}

/// Largest breach of Kirchhoff's second law, all volts computed anew from the currents.
double kirchhoff_breach(const Network& network, std::vector<double>& volts, const NetworkSolution& solution) {
    const auto count = network.node_count();
    double load = 0;
    for (std::size_t q = 0; q < network.run_count(); ++q)
        load += network.tap[q] * solution.run_amps[q];
    const double volts_per_tap = network.supply_ratio - network.regulation_per_va * load;
    if (!std::isfinite(load)) return load;
    double worst = 0;
    for (std::size_t q = 0; q < network.run_count(); ++q) {
        volts[count + q] = network.tap[q] * volts_per_tap;
        worst = std::max(worst, std::abs(volts[count + q] - solution.run_volts[q]));
    }
    for (std::size_t i = 0; i < count; ++i) {
        volts[i] =
            volts[static_cast<std::size_t>(network.feed[i])] - network.ohms[i] * solution.branch_amps[i];
        const double lamp = volts[i] - network.lead_ohms[i] * solution.lamp_amps[i];
        worst = std::max(worst, std::abs(volts[i] - solution.node_volts[i]));
        worst = std::max(worst, std::abs(lamp - solution.lamp_volts[i]));
    }
    for (std::size_t k = 0; k < network.links.size(); ++k) {
        const NetworkLink& link = network.links[k];
        const double drop = volts[static_cast<std::size_t>(link.a)] - volts[static_cast<std::size_t>(link.b)];
        worst = std::max(worst, std::abs(drop - link.ohms * solution.link_amps[k]));
    }
    return worst;
}

/// Fills in the currents and checks Kirchhoff's laws on the whole answer.
bool finish(const Network& network, Workspace& work, NetworkSolution& solution) {
    const auto heads = solution.node_volts.begin() + static_cast<std::ptrdiff_t>(network.node_count());
    std::copy(heads, solution.node_volts.end(), solution.run_volts.begin());
    sum_currents(network, solution);
    solution.residual_volts = kirchhoff_breach(network, work.check_volts, solution);
    return solution.residual_volts <= kirchhoff_tolerance_volts;
}

/// Whether the next step would be lost in rounding: the steps of Newton's method shrink quadratically, so
/// that the error left is about `step^3 / previous^2`.
bool is_settled(double step, double previous) {
    constexpr double negligible = 1e-12;
    if (step <= negligible) return true;
    return step < 1e-3 && step * step * step <= negligible * previous * previous;
}

bool iterate(const Network& network, Workspace& work, NetworkSolution& solution) {
    double previous = 0;
    for (int i = 0; i < step_limit; ++i) {
        const Step step = newton_step(network, FilamentLine::tangent, work, solution);
        if (!step.sound) return false;
        if ((is_settled(step.size, previous) || i + 1 == step_limit) && finish(network, work, solution))
            return true;
        previous = step.size;
    }
    return false;
}

/// For filaments so overloaded that their tangent leads astray: down along chords, from time to time trying
/// whether Newton's converges from there.
bool iterate_along_chords(const Network& network, Workspace& work, NetworkSolution& solution) {
    for (int chords = first_chords; chords <= chord_limit; chords *= 2) {
        for (int i = 0; i < chords; ++i)
            if (!newton_step(network, FilamentLine::chord, work, solution).sound) return false;
        work.kept_volts = solution.lamp_volts;
        if (iterate(network, work, solution)) return true;
        solution.lamp_volts = work.kept_volts;
    }
    return false;
}

void size_workspace(const Network& network, Workspace& work) {
    const auto count = network.node_count();
    const auto slots = count + network.run_count();
    work.carried_amps.resize(slots);
    work.carried_slope.resize(slots);
    for (auto* column : {&work.lead_volts, &work.lamp_inverse, &work.branch_inverse})
        column->resize(count);
    work.check_volts.resize(slots);
    if (!network.filaments.empty()) {
        work.fixed_amps.resize(count);
        work.fixed_slope.resize(count);
    }
    if (!network.links.empty()) {
        work.response_amps.resize(slots);
        work.link_response.resize(slots * network.links.size());
        work.link_matrix.resize(network.links.size() * network.links.size());
        work.link_right.resize(network.links.size());
        work.link_order.resize(network.links.size());
    }
}

void size_solution(const Network& network, NetworkSolution& solution) {
    const auto count = network.node_count();
    solution.node_volts.resize(count + network.run_count());
    solution.lamp_volts.resize(count);
    solution.lamp_amps.resize(count);
    solution.branch_amps.resize(count);
    solution.run_volts.resize(network.run_count());
    solution.run_amps.resize(network.run_count());
    solution.link_amps.resize(network.links.size());
}

/// Every node at the volts of its run without load.
void start_at_open_circuit(const Network& network, NetworkSolution& solution) {
    const auto count = network.node_count();
    for (std::size_t q = 0; q < network.run_count(); ++q)
        solution.node_volts[count + q] = network.tap[q] * network.supply_ratio;
    for (std::size_t i = 0; i < count; ++i)
        solution.lamp_volts[i] = solution.node_volts[i] =
            solution.node_volts[static_cast<std::size_t>(network.feed[i])];
}

bool solve_from_here(const Network& network, Workspace& work, NetworkSolution& solution) {
    solution.iterations = 0;
    solution.converged = iterate(network, work, solution);
    if (solution.converged || network.filaments.empty()) return solution.converged;
    start_at_open_circuit(network, solution);
    solution.converged = iterate_along_chords(network, work, solution);
    return solution.converged;
}

} // namespace

bool solve(const Network& network, Workspace& workspace, NetworkSolution& solution) {
    size_workspace(network, workspace);
    size_solution(network, solution);
    start_at_open_circuit(network, solution);
    return solve_from_here(network, workspace, solution);
}

bool solve_from(const Network& network, Workspace& workspace, NetworkSolution& solution) {
    if (solution.lamp_volts.size() != network.node_count()) return solve(network, workspace, solution);
    size_workspace(network, workspace);
    size_solution(network, solution);
    return solve_from_here(network, workspace, solution);
}

NetworkSolution solve(const Network& network) {
    Workspace workspace;
    NetworkSolution solution;
    solve(network, workspace, solution);
    return solution;
}

} // namespace rillwatt
