#include "rillwatt/plan/bill_figures.hpp"

#include "rillwatt/quantity/quantity_text.hpp"

#include <cmath>

namespace rillwatt {

namespace {

constexpr int usual_price_decimals = 2;
constexpr int most_price_decimals = 6;
constexpr int most_quantity_decimals = 3;

double rounded(double value, int decimals) {
    const double scale = std::pow(10, decimals);
    return std::round(value * scale) / scale;
}

struct Decimals {
    int price = usual_price_decimals;
    int quantity = 1;
};

/// The fewest decimals with which the product comes out, those of the price sparing.
Decimals enough_decimals(double quantity, double price, double cost, int quantity_decimals) {
    for (int p = usual_price_decimals; p <= most_price_decimals; ++p)
        for (int q = quantity_decimals; q <= most_quantity_decimals; ++q)
            if (std::abs(rounded(rounded(price, p) * rounded(quantity, q), 2) - rounded(cost, 2)) < 0.005)
                return {p, q};
    return {most_price_decimals, most_quantity_decimals};
}

} // namespace

BillFigures bill_figures(const BillLine& line, int quantity_decimals) {
    if (!line.price || !line.cost) return {trimmed_text(line.quantity, quantity_decimals), "", ""};
    const Decimals decimals =
        enough_decimals(line.quantity, line.price->value(), line.cost->value(), quantity_decimals);
    return {trimmed_text(line.quantity, decimals.quantity), fixed_text(line.price->value(), decimals.price),
            fixed_text(line.cost->value(), 2)};
}

} // namespace rillwatt
