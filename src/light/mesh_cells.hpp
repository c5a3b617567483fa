#pragma once

#include <algorithm>
#include <cmath>

namespace rillwatt {

/// Cells that a walk or a face may take: what is larger is cut more coarsely, and says so.
inline constexpr double most_cells = 100000;

/// Equal cells no larger than `cell` that a length is cut into; a length met but for rounding is met.
inline int cells_along(double length, double cell) {
    return std::max(1, static_cast<int>(std::ceil(length / cell - 1e-9)));
}

/// The usual cell, doubled until no more than `most_cells` are needed.
template<class Count>
double cell_for(double usual, Count cells) {
    double cell = usual;
    while (cells(cell) > most_cells && cells(2 * cell) < cells(cell))
        cell *= 2;
    return cell;
}

} // namespace rillwatt
