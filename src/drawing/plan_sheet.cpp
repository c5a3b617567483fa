#include "plan_sheet.hpp"

#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace rillwatt {
namespace {

class Extent {
  public:
    void add(PlanPoint p) {
        low_ = {std::min(low_.x, p.x), std::min(low_.y, p.y)};
        high_ = {std::max(high_.x, p.x), std::max(high_.y, p.y)};
    }
    void add(const std::optional<PlanPoint>& p) {
        if (p) add(*p);
    }
    void add(const std::vector<PlanPoint>& points) {
        for (const PlanPoint p : points)
            add(p);
    }
    template<class PartList>
    void add_places(const PartList& parts) {
        for (const auto& part : parts)
            add(part.at);
    }
    bool empty() const { return low_.x > high_.x; }
    PlanPoint low() const { return empty() ? PlanPoint{0, 0} : low_; }
    PlanPoint high() const { return empty() ? PlanPoint{10, 8} : high_; }

  private:
    static constexpr double far = std::numeric_limits<double>::infinity();
    PlanPoint low_{far, far};
    PlanPoint high_{-far, -far};
};

Extent extent_of(const Site& site, const SiteLengths& lengths) {
    Extent extent;
    extent.add_places(site.circuits);
    extent.add_places(site.pumps);
    extent.add_places(site.transformers);
    extent.add_places(site.splices);
    extent.add_places(site.fixtures);
    extent.add_places(site.marks);
    extent.add_places(site.viewpoints);
    for (const Area& area : site.areas)
        extent.add(area.outline);
    for (const Walk& walk : site.walks)
        extent.add(walk.line);
    for (const Sleeve& sleeve : site.sleeves)
        extent.add({sleeve.a, sleeve.b});
    for (const Falls& falls : site.falls)
        extent.add({falls.lip_left, falls.lip_right});
    for (const auto* list : {&lengths.splices, &lengths.fixtures, &lengths.links})
        for (const PartLength& length : *list)
            extent.add(length.route);
    return extent;
}

} // namespace

std::string scale_attributes(const PlanSheet& sheet) {
    const SheetPoint origin = sheet.at(PlanPoint{0, 0});
    return fmt::format("data-metre=\"{}\" data-origin=\"{} {}\"", trimmed_text(sheet.pixels_per_metre, 4),
                       trimmed_text(origin.x, 2), trimmed_text(origin.y, 2));
}

double unit_metres(LengthUnit unit) { return unit == LengthUnit::feet ? metres_per_foot : 1; }

double round_step(double pixels_per_metre, LengthUnit unit, double pixels) {
    for (double decade = 0.1;; decade *= 10)
        for (const double digit : {1.0, 2.0, 5.0}) {
            const double step = digit * decade * unit_metres(unit);
            if (step * pixels_per_metre >= pixels) return step;
        }
}

PlanSheet plan_sheet(const Site& site, const SiteLengths& lengths) {
    constexpr double edge = 22;
    constexpr double left_numbers = 26;
    constexpr double bottom_numbers = 18;
    constexpr double column_width = 262;
    constexpr double gap = 16;
    constexpr double widest = 1010;
    constexpr double highest = 900;
    const Extent extent = extent_of(site, lengths);
    const double span = std::max({extent.high().x - extent.low().x, extent.high().y - extent.low().y, 1.0});
    const double room = 0.05 * span;
    PlanSheet sheet;
    sheet.low = {extent.low().x - room, extent.low().y - room};
    sheet.high = {extent.high().x + room, extent.high().y + room};
    const double across = sheet.high.x - sheet.low.x;
    const double up = sheet.high.y - sheet.low.y;
    sheet.pixels_per_metre = std::min(widest / across, highest / up);
    sheet.frame = {edge + left_numbers, edge, across * sheet.pixels_per_metre, up * sheet.pixels_per_metre};
    sheet.column = {sheet.frame.right() + gap, edge, column_width, sheet.frame.height};
    sheet.width = sheet.column.right() + edge;
    sheet.height = sheet.frame.bottom() + bottom_numbers + edge;
    return sheet;
}

} // namespace rillwatt
