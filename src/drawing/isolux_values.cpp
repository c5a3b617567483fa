#include "isolux_values.hpp"

#include "rillwatt/quantity/quantity_text.hpp"

#include "sheet_grid.hpp"
#include <algorithm>
#include <cmath>
#include <span>

namespace rillwatt {
namespace {

using Ring = std::vector<SheetPoint>;

constexpr double between_places = 7;
constexpr double between_values = 650;
constexpr double cost_of_foreign_line = 1.5;
/// A ring so many times as long as the way round its value still shows its shape.
constexpr double rings_per_value = 2.2;

double height_of(double text_size) { return text_size + 2; }

double length_of(const Ring& ring) {
    double length = 0;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
        length += std::hypot(ring[i].x - ring[j].x, ring[i].y - ring[j].y);
    return length;
}

/// Points of the ring at equal distances along it.
Ring evenly_along(const Ring& ring, double spacing) {
    Ring points;
    double ahead = 0; // from the corner that is looked at to the next point
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const SheetPoint a = ring[i];
        const SheetPoint b = ring[(i + 1) % ring.size()];
        const double length = std::hypot(b.x - a.x, b.y - a.y);
        for (; ahead < length; ahead += spacing)
            points.push_back({a.x + ahead / length * (b.x - a.x), a.y + ahead / length * (b.y - a.y)});
        ahead -= length;
    }
    return points;
}

SheetBox box_of(const std::vector<DrawnIsolux>& lines) {
    SheetPoint low{0, 0};
    SheetPoint high{0, 0};
    for (const DrawnIsolux& line : lines)
        for (const Ring& ring : line.rings)
            for (const SheetPoint p : ring) {
                low = {std::min(low.x, p.x), std::min(low.y, p.y)};
                high = {std::max(high.x, p.x), std::max(high.y, p.y)};
            }
    return {low.x, low.y, high.x - low.x, high.y - low.y};
}

/// The lines of one level, found by where they run.
class LevelLines {
  public:
    LevelLines(const DrawnIsolux& line, const SheetBox& frame) : grid_(frame, point_count(line)) {
        for (const Ring& ring : line.rings)
            for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
                grid_.add(pieces_.size(), ring[j], ring[i]);
                pieces_.emplace_back(ring[j], ring[i]);
            }
    }

    bool run_through(const SheetBox& box) const {
        return grid_.any_near(box,
                              [&](std::size_t i) { return meets(pieces_[i].first, pieces_[i].second, box); });
    }

  private:
    static std::size_t point_count(const DrawnIsolux& line) {
        std::size_t count = 0;
        for (const Ring& ring : line.rings)
            count += ring.size();
        return count;
    }

    SheetGrid grid_;
    std::vector<std::pair<SheetPoint, SheetPoint>> pieces_;
};

/// At a sharp edge all levels run side by side; the two next ones on either side are enough to tell.
double foreign_lines(const std::vector<LevelLines>& levels, std::size_t own, const SheetBox& box) {
    constexpr std::size_t levels_off = 2;
    double count = 0;
    for (std::size_t i = own < levels_off ? 0 : own - levels_off;
         i < std::min(levels.size(), own + levels_off + 1); ++i)
        if (i != own && levels[i].run_through(box)) ++count;
    return count;
}

/// One value for the stretch of a ring from one of its points to another.
IsoluxValue value_on(const std::vector<LevelLines>& levels, std::size_t level, std::string words,
                     std::span<const SheetPoint> points, double text_size) {
    const double width = text_width(words, text_size);
    const double height = height_of(text_size);
    IsoluxValue value{std::move(words), {}};
    for (const SheetPoint at : points) {
        const SheetBox box = box_around(at, width, height);
        const double cost = cost_of_foreign_line * foreign_lines(levels, level, box);
        value.places.push_back({box, cost, {}});
    }
    return value;
}

} // namespace

std::vector<IsoluxValue> isolux_values(const std::vector<DrawnIsolux>& lines, double text_size) {
    const SheetBox frame = box_of(lines);
    std::vector<LevelLines> levels;
    for (const DrawnIsolux& line : lines)
        levels.emplace_back(line, frame);
    std::vector<IsoluxValue> values;
    for (std::size_t level = 0; level < lines.size(); ++level) {
        const std::string words = trimmed_text(lines[level].lux, 1) + " lx";
        const double way_round = 2 * (text_width(words, text_size) + height_of(text_size));
        for (const Ring& ring : lines[level].rings) {
            const double length = length_of(ring);
            if (length < rings_per_value * way_round) continue;
            const Ring points = evenly_along(ring, between_places);
            const auto count = static_cast<std::size_t>(std::max(1L, std::lround(length / between_values)));
            for (std::size_t k = 0; k < count; ++k) {
                const std::size_t from = k * points.size() / count;
                const std::size_t to = (k + 1) * points.size() / count;
                values.push_back(
                    value_on(levels, level, words, std::span(points).subspan(from, to - from), text_size));
            }
        }
    }
    return values;
}

} // namespace rillwatt
