#include "walk_line.hpp"

namespace rillwatt {

double WalkLine::length() const {
    double sum = 0;
    for (std::size_t i = 1; i < walk_.line.size(); ++i)
        sum += distance(walk_.line[i - 1], walk_.line[i]).value();
    return sum;
}

WalkSlot WalkLine::beside(double along, int side, double off) const {
    double left = along;
    for (std::size_t i = 1; i < walk_.line.size(); ++i) {
        const PlanPoint a = walk_.line[i - 1];
        const PlanPoint b = walk_.line[i];
        const double stretch = distance(a, b).value();
        if (stretch <= 0) continue;
        if (left > stretch && i + 1 < walk_.line.size()) {
            left -= stretch;
            continue;
        }
        const double dx = (b.x - a.x) / stretch;
        const double dy = (b.y - a.y) / stretch;
        return {{a.x + left * dx - side * off * dy, a.y + left * dy + side * off * dx}, along, side};
    }
    return {walk_.line.empty() ? PlanPoint{} : walk_.line.front(), along, side};
}

} // namespace rillwatt
