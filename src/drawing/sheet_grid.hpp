#pragma once

#include "svg_parts.hpp"
#include <algorithm>
#include <cstddef>
#include <limits>
#include <vector>

namespace rillwatt {

/// Finds what lies near a place of a drawing: a uniform grid over the frame, each cell with the items that
/// touch it. What lies outside the frame counts to the cells at its edge.
class SheetGrid {
  public:
    /// Cells so large that `items` spread evenly give about one to each.
    SheetGrid(const SheetBox& frame, std::size_t items);

    void add(std::size_t item, const SheetBox& box) {
        each_cell(box, [&](Cell& cell) { cell.push_back(item); });
    }
    void add(std::size_t item, SheetPoint a, SheetPoint b) {
        each_cell(a, b, [&](Cell& cell) { cell.push_back(item); });
    }
    void remove(std::size_t item, const SheetBox& box) {
        each_cell(box, [&](Cell& cell) { std::erase(cell, item); });
    }
    void remove(std::size_t item, SheetPoint a, SheetPoint b) {
        each_cell(a, b, [&](Cell& cell) { std::erase(cell, item); });
    }

    /// Whether `is_met` holds for an item whose cells the box touches.
    template<class Test>
    bool any_near(const SheetBox& box, Test&& is_met) const {
        const Span columns = columns_of(box.x, box.right());
        const Span rows = rows_of(box.y, box.bottom());
        for (std::size_t row = rows.first; row <= rows.last; ++row)
            if (any_in(row, columns, is_met)) return true;
        return false;
    }
    /// Whether `is_met` holds for an item whose cells the straight line from a to b touches.
    template<class Test>
    bool any_near(SheetPoint a, SheetPoint b, Test&& is_met) const {
        const Span rows = rows_of(std::min(a.y, b.y), std::max(a.y, b.y));
        for (std::size_t row = rows.first; row <= rows.last; ++row)
            if (any_in(row, columns_in(row, a, b), is_met)) return true;
        return false;
    }

  private:
    using Cell = std::vector<std::size_t>;
    struct Span {
        std::size_t first;
        std::size_t last;
    };

    Span columns_of(double low, double high) const { return span(low - frame_.x, high - frame_.x, columns_); }
    Span rows_of(double low, double high) const { return span(low - frame_.y, high - frame_.y, rows_); }
    Span span(double low, double high, std::size_t count) const;
    /// The columns that a straight line touches on its way through a row.
    Span columns_in(std::size_t row, SheetPoint a, SheetPoint b) const;

    template<class Test>
    bool any_in(std::size_t row, Span columns, Test& is_met) const {
        for (std::size_t column = columns.first; column <= columns.last; ++column)
            for (const std::size_t item : cells_[row * columns_ + column])
                if (is_met(item)) return true;
        return false;
    }
    template<class Visit>
    void each_cell(const SheetBox& box, Visit&& visit) {
        const Span columns = columns_of(box.x, box.right());
        const Span rows = rows_of(box.y, box.bottom());
        for (std::size_t row = rows.first; row <= rows.last; ++row)
            for (std::size_t column = columns.first; column <= columns.last; ++column)
                visit(cells_[row * columns_ + column]);
    }
    template<class Visit>
    void each_cell(SheetPoint a, SheetPoint b, Visit&& visit) {
        const Span rows = rows_of(std::min(a.y, b.y), std::max(a.y, b.y));
        for (std::size_t row = rows.first; row <= rows.last; ++row) {
            const Span columns = columns_in(row, a, b);
            for (std::size_t column = columns.first; column <= columns.last; ++column)
                visit(cells_[row * columns_ + column]);
        }
    }

    SheetBox frame_;
    double cell_;
    std::size_t columns_;
    std::size_t rows_;
    std::vector<Cell> cells_;
};

} // namespace rillwatt
