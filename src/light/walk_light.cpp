#include "rillwatt/light/walk_light.hpp"

#include "mesh_cells.hpp"
#include <cmath>

namespace rillwatt {
namespace {

constexpr double usual_cell = 0.25; ///< metres
constexpr double slack = 1e-9;      ///< a limit met but for rounding is met

/// Cells that the stretches of a walk take together.
double cells_of(const Walk& walk, double cell) {
    double along = 0;
    for (std::size_t i = 1; i < walk.line.size(); ++i)
        along += cells_along(distance(walk.line[i - 1], walk.line[i]).value(), cell);
    return along * cells_along(walk.width.value(), cell);
}

bool reaches(double value, const std::optional<Lux>& target) {
    return !target || value >= target->value() * (1 - slack);
}

} // namespace

std::optional<WalkTarget> walk_class(std::string_view name) {
    const struct {
        std::string_view name;
        double mean;
        double minimum;
    } classes[] = {{"P1", 15, 3}, {"P2", 10, 2},  {"P3", 7.5, 1.5},
                   {"P4", 5, 1},  {"P5", 3, 0.6}, {"P6", 2, 0.4}};
    for (const auto& c : classes)
        if (c.name == name) return WalkTarget{Lux(c.mean), Lux(c.minimum)};
    if (name == "P7") return WalkTarget{};
    return {};
}

WalkTarget walk_target(const Walk& walk) {
    WalkTarget target = walk_class(walk.target.value_or("P7")).value_or(WalkTarget{});
    if (walk.mean_lux) target.mean = walk.mean_lux;
    if (walk.min_lux) target.minimum = walk.min_lux;
    return target;
}

Metres walk_cell(const Walk& walk) {
    return Metres(cell_for(usual_cell, [&](double cell) { return cells_of(walk, cell); }));
}

std::vector<SpacePoint> walk_points(const Walk& walk) {
    std::vector<SpacePoint> points;
    const double cell = walk_cell(walk).value();
    const int across = cells_along(walk.width.value(), cell);
    for (std::size_t i = 1; i < walk.line.size(); ++i) {
        const PlanPoint a = walk.line[i - 1];
        const PlanPoint b = walk.line[i];
        const double stretch = distance(a, b).value();
        if (stretch <= 0) continue;
        const double dx = (b.x - a.x) / stretch;
        const double dy = (b.y - a.y) / stretch;
        const int along = cells_along(stretch, cell);
        for (int k = 0; k < along; ++k)
            for (int j = 0; j < across; ++j) {
                const double s = stretch * (k + 0.5) / along;
                const double t = walk.width.value() * ((j + 0.5) / across - 0.5);
                points.push_back({a.x + s * dx - t * dy, a.y + s * dy + t * dx, walk.elevation.value()});
            }
    }
    return points;
}

WalkLight walk_light_of(const Walk& walk, const LitPoints& lit) {
    const LuxSpread spread = spread_of(lit.lux);
    const WalkTarget target = walk_target(walk);
    WalkLight light;
    light.mean = Lux(spread.mean);
    light.minimum = Lux(spread.least);
    light.maximum = Lux(spread.greatest);
    light.uniformity = spread.mean > 0 ? spread.least / spread.mean : 0;
    if (!lit.points.empty()) light.darkest = lit.points[spread.darkest];
    light.target_mean = target.mean;
    light.target_minimum = target.minimum;
    light.cell = walk_cell(walk);
    light.coarse = light.cell.value() > usual_cell;
    light.meets = reaches(spread.mean, target.mean) && reaches(spread.least, target.minimum);
    return light;
}

WalkLight walk_light(const SceneIndex& scene, const Walk& walk) {
    LitPoints lit;
    lit.points = walk_points(walk);
    scene.illuminate(lit);
    return walk_light_of(walk, lit);
}

} // namespace rillwatt
