#include "sheet_grid.hpp"

#include <cmath>

namespace rillwatt {
namespace {

constexpr double least_cell = 12; // a label's height: smaller cells only list the same labels more often
constexpr double largest_cell = 64;

double cell_size(const SheetBox& frame, std::size_t items) {
    const double share = frame.width * frame.height / static_cast<double>(std::max<std::size_t>(items, 1));
    return std::clamp(std::sqrt(std::max(share, 0.0)), least_cell, largest_cell);
}

std::size_t cells_across(double length, double cell) {
    return static_cast<std::size_t>(std::max(length, 0.0) / cell) + 1;
}

} // namespace

SheetGrid::SheetGrid(const SheetBox& frame, std::size_t items)
    : frame_(frame), cell_(cell_size(frame, items)), columns_(cells_across(frame.width, cell_)),
      rows_(cells_across(frame.height, cell_)), cells_(columns_ * rows_) {}

SheetGrid::Span SheetGrid::span(double low, double high, std::size_t count) const {
    const auto cell = [&](double from_edge) {
        return static_cast<std::size_t>(std::clamp(from_edge / cell_, 0.0, static_cast<double>(count - 1)));
    };
    return {cell(low), cell(high)};
}

SheetGrid::Span SheetGrid::columns_in(std::size_t row, SheetPoint a, SheetPoint b) const {
    constexpr double rounding = 1e-6;
    if (a.y > b.y) std::swap(a, b);
    const double top = frame_.y + static_cast<double>(row) * cell_;
    const auto x_at = [&](double y) { return a.x + (b.x - a.x) * ((y - a.y) / (b.y - a.y)); };
    const double x1 = row > 0 && a.y < top ? x_at(top) : a.x;
    const double x2 = row + 1 < rows_ && b.y > top + cell_ ? x_at(top + cell_) : b.x;
    return columns_of(std::min(x1, x2) - rounding, std::max(x1, x2) + rounding);
}

} // namespace rillwatt
