#include "legend_flow.hpp"

#include <fmt/format.h>

namespace rillwatt {

LegendFlow::LegendFlow(double left, double y, double width, double text_size)
    : left_(left), width_(width), size_(text_size), x_(left), top_(y) {}

void LegendFlow::add(std::string_view sample, double sample_width, std::string_view words) {
    constexpr double before_words = 5;
    constexpr double between_entries = 13;
    const double needed = sample_width + before_words + text_width(words, size_);
    if (x_ > left_ && x_ + needed > left_ + width_) {
        x_ = left_;
        top_ += row_height();
    }
    const double middle = top_ + row_height() / 2;
    text_ += fmt::format(
        "<g transform=\"translate({} {})\">{}</g>{}\n", coordinate(x_), coordinate(middle), sample,
        svg_text({x_ + sample_width + before_words, middle + 0.36 * size_}, words, size_, ""));
    x_ += needed + between_entries;
}

} // namespace rillwatt
