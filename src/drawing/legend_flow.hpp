#pragma once

#include "svg_parts.hpp"
#include <string>
#include <string_view>

namespace rillwatt {

/// Entries of a legend side by side. Each takes the room of its sample and its words; what would run over
/// the width begins the next row.
class LegendFlow {
  public:
    /// The first row has its top at `y`.
    LegendFlow(double left, double y, double width, double text_size);

    /// The sample is drawn from x = 0 to its width, about y = 0.
    void add(std::string_view sample, double sample_width, std::string_view words);

    const std::string& text() const { return text_; }
    double bottom() const { return top_ + row_height(); }

  private:
    double row_height() const { return 1.6 * size_; }

    double left_;
    double width_;
    double size_;
    double x_;
    double top_;
    std::string text_;
};

} // namespace rillwatt
