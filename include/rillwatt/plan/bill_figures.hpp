#pragma once

#include "rillwatt/purchase/bill.hpp"

#include <string>

namespace rillwatt {

/// The figures of a line of the bill as printed: quantity times price is the cost, to the cent, for whoever
/// checks it by hand.
struct BillFigures {
    std::string quantity;
    std::string price; ///< empty: none
    std::string cost;  ///< empty: none
};

/// `quantity_decimals`: the fewest the quantity is printed with.
BillFigures bill_figures(const BillLine& line, int quantity_decimals = 1);

} // namespace rillwatt
