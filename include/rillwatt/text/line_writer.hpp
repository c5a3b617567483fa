#pragma once

#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <string>
#include <string_view>

namespace rillwatt {

/// Writes a table at the end of a text, cell after cell.
class LineWriter {
  public:
    explicit LineWriter(std::string& out) : out_(out) {}

    void text(std::string_view text) { out_ += text; }
    void blanks(std::size_t columns) { out_.append(columns, ' '); }

    /// Text of as many columns as bytes, set to the right of `columns`.
    void right(std::string_view plain, std::size_t columns) {
        if (plain.size() < columns) blanks(columns - plain.size());
        text(plain);
    }

    /// A figure set to the right of `columns`; what is wider takes the room it needs.
    void figure(double value, FigureStyle style, std::size_t columns) {
        right(fixed_text(value, style.decimals).append(style.unit), columns);
    }

    void end_line() { out_ += '\n'; }

  private:
    std::string& out_;
};

} // namespace rillwatt
