#pragma once

#include "rillwatt/solver/site_solution.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace rillwatt {

/// A filament lamp: `amps_at_rated * (V / rated_volts) ^ filament_exponent` (`circuit/lamp_load.hpp`).
struct FilamentLoad {
    int node = 0;
    double amps_at_rated = 0;
    double rated_volts = 12;
};

/// A cable that closes a ring between two nodes. Its current counts positive from `a` to `b`.
struct NetworkLink {
    int a = 0;
    int b = 0;
    double ohms = 0;
};

/// The circuit of one transformer in one case as plain arrays, ready to be solved many times.
///
/// Node numbers are those of TransformerCircuit::nodes: every node comes after the node that feeds it, in any
/// order apart from that (level by level solves fastest). All numbers are volts, amperes, ohms, siemens and
/// volt-amperes, finite; resistances and loads are not negative. Any of them may be changed between two
/// solves: exchanging a cable is setting `ohms` of the nodes concerned.
///
/// A lamp at a node draws `power / V + current + conductance * V`, plus its filament current: the columns of
/// `circuit/lamp_load.hpp`. One lamp has one of the four, a splice none.
struct Network {
    std::vector<int> feed;           ///< node that feeds it; `node_count() + q` for the start of run q
    std::vector<double> ohms;        ///< out and back, of the cable that leads here; 0 at the start of a run
    std::vector<double> lead_ohms;   ///< out and back, of the fixture's own lead
    std::vector<double> power;       ///< VA of a constant-power lamp
    std::vector<double> current;     ///< A of a constant-current lamp
    std::vector<double> conductance; ///< S of a resistance lamp
    std::vector<FilamentLoad> filaments;
    std::vector<int> lamps;    ///< nodes that carry a lamp, ascending
    std::vector<int> run_node; ///< start of each run
    std::vector<double> tap;   ///< open-circuit volts of each run at rated primary volts
    std::vector<NetworkLink> links;
    double supply_ratio = 1;      ///< supply volts over the transformer's primary volts: `s`
    double regulation_per_va = 0; ///< `g / VA`: couples the runs

    std::size_t node_count() const { return feed.size(); }
    std::size_t run_count() const { return run_node.size(); }
};

/// Builds the arrays of one circuit under one case. What is open counts as nothing until it is set: a missing
/// cable or length as 0 ohms, a missing tap as 0 volts, a missing transformer as an ideal one on a supply
/// ratio of 1.
Network make_network(const TransformerCircuit& circuit, const OperatingCase& conditions);

/// The same into a network that may hold another, whose memory it takes over.
void make_network(const TransformerCircuit& circuit, const OperatingCase& conditions, Network& network);

/// Turns the network of one case of a circuit into that of another: the resistances at its temperature, and
/// its supply.
void set_conditions(Network& network, const TransformerCircuit& circuit, const OperatingCase& conditions);

/// Puts a lamp on a node that carries none yet; nodes are to be given in ascending order.
void add_lamp(Network& network, int node, const FixtureType& type);

/// Exchanges the transformer: its regulation, rating and primary volts under the case's supply.
void set_transformer(Network& network, const TransformerType& type, Volts supply,
                     const OperatingCase& conditions);

/// Both conductors of a cable at a temperature, in ohms.
double cable_ohms(const CableType& cable, Metres length, Celsius temperature);

/// What the solver needs beside the network. Reuse one for any number of solves: it grows to the largest
/// network it has seen and nothing is allocated after that.
struct Workspace {
    std::vector<double> carried_amps;   ///< constant part of what a subtree draws
    std::vector<double> carried_slope;  ///< and its change per volt
    std::vector<double> lead_volts;     ///< constant part of what a lead drops
    std::vector<double> lamp_inverse;   ///< 1 / pivot of a lead
    std::vector<double> branch_inverse; ///< 1 / pivot of its cable
    std::vector<double> fixed_amps;     ///< constant currents plus filaments, linearised
    std::vector<double> fixed_slope;    ///< conductances plus filaments, linearised
    std::vector<double> check_volts;    ///< volts by Kirchhoff's laws from the answer's currents
    std::vector<double> response_amps;  ///< what a subtree draws per ampere through a link
    std::vector<double> link_response;  ///< volts of every node per ampere through each link
    std::vector<double> link_matrix;
    std::vector<double> link_right;
    std::vector<std::size_t> link_order;
    std::vector<double> kept_volts; ///< to return to when a step fails
};

/// Volts and amperes of a solved network. Reuse it as the workspace.
struct NetworkSolution {
    bool converged = false;          ///< false: there is no operating point
    std::vector<double> node_volts;  ///< where the lead joins the cable; then one entry per run head
    std::vector<double> lamp_volts;  ///< after the lead; the node's own volts where there is no lamp
    std::vector<double> lamp_amps;   ///< 0 where there is no lamp
    std::vector<double> branch_amps; ///< through the cable that leads to each node
    std::vector<double> run_volts;   ///< at the head of each run
    std::vector<double> run_amps;
    std::vector<double> link_amps; ///< positive from `a` to `b`
    double residual_volts = 0;     ///< largest breach of Kirchhoff's laws over all nodes and links
    int iterations = 0;
};

/// Largest breach of Kirchhoff's laws an answer may have, in volts on any node.
inline constexpr double kirchhoff_tolerance_volts = 1e-9;

/// Solves a network for its upper root. `solution.converged` tells whether there is one; when there is none
/// the arrays are of no meaning. Returns `solution.converged`.
///
/// Method: Newton's on the whole tree, started from the open-circuit volts. Each step solves the linearised
/// circuit exactly in O(nodes): backward, every subtree is reduced to "constant amperes plus slope times
/// volts" as its feed sees it; the transformer's series impedance joins the runs in one scalar equation;
/// forward, the volts follow. Links are cut and their currents found from a small dense system of the volts
/// that one ampere through each of them causes.
///
/// Why it finds the upper root and fails only where there is none: write the circuit as
/// `H(V) = Y V + I(V) - J = 0` with Y its conductance matrix (off-diagonal entries not positive). For
/// constant-power, constant-current and resistance lamps I is convex, so H is, and the tangent lies below it.
/// Let V* be the greatest root. At every V >= V* the Jacobian is an M-matrix (its inverse has no negative
/// entry), so that from any V >= V* Newton's step lands between V* and V: the iterates fall monotonically
/// onto V* (Ortega and Rheinboldt, Iterative Solution of Nonlinear Equations in Several Variables, 1970,
/// theorem 13.3.4). Open-circuit volts lie above every root
/// (links between different taps aside: there the first step, by convexity, leads above it). If an iterate
/// therefore loses the M-matrix property (a pivot that is not positive; with links, a wrong count of negative
/// ones) or the volts of a constant-power or constant-current lamp are not positive, no root exists. A root
/// whose Jacobian is an M-matrix is the greatest, so that the answer carries its own proof. Filament current
/// is concave: where the tangent fails, the chord through zero, which does lie below it, takes its place
/// until Newton's converges from there.
bool solve(const Network& network, Workspace& workspace, NetworkSolution& solution);

/// The same, started from the lamp volts a solution already holds: for a network whose loads or resistances
/// have only grown since, so that the old volts lie above the new ones.
bool solve_from(const Network& network, Workspace& workspace, NetworkSolution& solution);

/// Convenience for a single solve.
NetworkSolution solve(const Network& network);

/// Where a circuit's loads, all multiplied by one factor, stop having an operating point.
struct LoadLimit {
    double share = 1; ///< greatest factor in [0, 1] with an operating point, to 1e-10 of itself
    int node = -1;    ///< lamp with the lowest volts there; -1 when there is no lamp
    int run = -1;     ///< the run it hangs on
};

/// Finds the limit of a network by bisection on the factor. `file_order[k]` ranks the lamps of
/// Network::lamps: of those equally low (to 1e-6 V) the one with the least rank is named.
LoadLimit find_load_limit(const Network& network, const std::vector<std::size_t>& file_order);

/// Index of the run each node belongs to.
std::vector<int> run_of_each_node(const Network& network);

} // namespace rillwatt
