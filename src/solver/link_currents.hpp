#pragma once

#include "rillwatt/solver/network.hpp"

#include <cmath>

namespace rillwatt {

/// A pivot that is as good as zero would spoil the step: with links it may be, without the circuit being so.
inline double kept_from_zero(double pivot) {
    constexpr double least = 1e-9;
    return std::abs(pivot) < least ? std::copysign(least, pivot) : pivot;
}

/// Closes the rings of a linearised network: finds the current of each link so that it agrees with the volts
/// at its ends, and corrects the volts of every node for it.
///
/// With the links cut, `node_volts` is what the tree alone gives. One ampere through link k changes them by
/// its response `w_k`, so that `u = u_tree + sum_k(J_k w_k)` and `u_a - u_b = R J` for each link: a dense
/// system as large as there are links. Returns how many pivots of that system are negative. The circuit as a
/// whole is stable when that is also the number of negative pivots of the tree (additivity of inertia, E. V.
/// Haynsworth, Linear Algebra and its Applications 1, 1968): cutting a ring may leave a tree that could not
/// stand alone.
int close_links(const Network& network, Workspace& workspace, NetworkSolution& solution);

} // namespace rillwatt
