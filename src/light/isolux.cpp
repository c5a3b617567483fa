#include "rillwatt/light/isolux.hpp"

#include "rillwatt/layout/places.hpp"
#include "rillwatt/light/scene_index.hpp"

#include <algorithm>
#include <unordered_map>

namespace rillwatt {
namespace {

constexpr double margin = 2.5;        ///< metres round what is drawn
constexpr double smallest_step = 0.2; ///< metres
constexpr double most_points = 12000;
constexpr double beside_walk = 4; ///< metres from a walk's edge that share its height

PlanBox drawn_box(const Site& site, const LightScene& scene) {
    PlanBox box;
    for (const Walk& walk : site.walks)
        for (const PlanPoint p : walk.line)
            box.include(p.x, p.y);
    for (const Falls& falls : site.falls) {
        box.include(falls.lip_left.x, falls.lip_left.y);
        box.include(falls.lip_right.x, falls.lip_right.y);
    }
    for (const PlacedLight& light : scene.lights)
        box.include(light.pose.at.x, light.pose.at.y);
    return box;
}

/// The height of the ground: near a walk the walk's, elsewhere 0.
class Ground {
  public:
    explicit Ground(const Site& site) : site_(&site), walks_(boxes_of(site)) {}

    double at(PlanPoint p) const {
        double height = 0;
        double nearest = beside_walk;
        for (const std::size_t i : walks_.found(p)) {
            const Walk& walk = site_->walks[i];
            const double off = distance_to_line(walk.line, p) - walk.width.value() / 2;
            if (off >= nearest) continue;
            nearest = off;
            height = walk.elevation.value();
        }
        return height;
    }

  private:
    static std::vector<PlanBox> boxes_of(const Site& site) {
        std::vector<PlanBox> boxes;
        for (const Walk& walk : site.walks)
            boxes.push_back(box_of(walk.line).grown(beside_walk + walk.width.value() / 2));
        return boxes;
    }

    const Site* site_;
    PlanIndex walks_;
};

bool in_building(const Site& site, const AreaIndex& areas, PlanPoint p) {
    const std::vector<std::size_t> covering = areas.covering(p);
    return std::any_of(covering.begin(), covering.end(),
                       [&](std::size_t i) { return site.areas[i].kind == AreaKind::building; });
}

/// A crossing of the mesh: on the edge to the right of a node, or on the edge above it.
using EdgeId = std::size_t;

/// The map with a dark frame, so that no ring is cut off.
class Mesh {
  public:
    explicit Mesh(const LuxMap& map) : map_(map), columns_(map.columns + 2), rows_(map.rows + 2) {}

    std::size_t columns() const { return columns_; }
    std::size_t rows() const { return rows_; }

    double lux(std::size_t i, std::size_t j) const {
        const bool frame = i == 0 || j == 0 || i + 1 == columns_ || j + 1 == rows_;
        return frame ? 0 : map_.at(i - 1, j - 1);
    }

    EdgeId right_of(std::size_t i, std::size_t j) const { return 2 * (j * columns_ + i); }
    EdgeId above(std::size_t i, std::size_t j) const { return right_of(i, j) + 1; }

    PlanPoint crossing(EdgeId edge, double level) const {
        const std::size_t i = edge / 2 % columns_;
        const std::size_t j = edge / 2 / columns_;
        const bool upright = edge % 2 == 1;
        const double a = lux(i, j);
        const double b = upright ? lux(i, j + 1) : lux(i + 1, j);
        const double share = a == b ? 0.5 : (level - a) / (b - a);
        const double x = static_cast<double>(i) - 1 + (upright ? 0 : share);
        const double y = static_cast<double>(j) - 1 + (upright ? share : 0);
        return {map_.corner.x + x * map_.step, map_.corner.y + y * map_.step};
    }

  private:
    const LuxMap& map_;
    std::size_t columns_;
    std::size_t rows_;
};

/// From which edge to which the line runs through a cell, brighter on its left. Corners count 1, 2, 4, 8
/// counter- clockwise from the lower left; edges 0 below, 1 right, 2 above, 3 left; 4 stands for none.
struct Steps {
    int from[2];
    int to[2];
};
constexpr int none = 4;
constexpr Steps steps_of[16] = {{{none, none}, {none, none}}, {{0, none}, {3, none}}, {{1, none}, {0, none}},
                                {{1, none}, {3, none}},       {{2, none}, {1, none}}, {{0, 2}, {3, 1}},
                                {{2, none}, {0, none}},       {{2, none}, {3, none}}, {{3, none}, {2, none}},
                                {{0, none}, {2, none}},       {{1, 3}, {0, 2}},       {{1, none}, {2, none}},
                                {{3, none}, {1, none}},       {{0, none}, {1, none}}, {{3, none}, {0, none}},
                                {{none, none}, {none, none}}};
/// The two saddles where the middle of the cell is bright.
constexpr Steps bright_saddle_5{{0, 2}, {1, 3}};
constexpr Steps bright_saddle_10{{3, 1}, {0, 2}};

Steps cell_steps(const Mesh& mesh, std::size_t i, std::size_t j, double level) {
    const double corners[4] = {mesh.lux(i, j), mesh.lux(i + 1, j), mesh.lux(i + 1, j + 1),
                               mesh.lux(i, j + 1)};
    int kind = 0;
    for (int c = 0; c < 4; ++c)
        if (corners[c] >= level) kind |= 1 << c;
    const bool bright = (corners[0] + corners[1] + corners[2] + corners[3]) / 4 >= level;
    if (kind == 5 && bright) return bright_saddle_5;
    if (kind == 10 && bright) return bright_saddle_10;
    return steps_of[kind];
}

using Next = std::unordered_map<EdgeId, EdgeId>;

Next connections(const Mesh& mesh, double level) {
    Next next;
    for (std::size_t j = 0; j + 1 < mesh.rows(); ++j)
        for (std::size_t i = 0; i + 1 < mesh.columns(); ++i) {
            const EdgeId edges[4] = {mesh.right_of(i, j), mesh.above(i + 1, j), mesh.right_of(i, j + 1),
                                     mesh.above(i, j)};
            const Steps steps = cell_steps(mesh, i, j, level);
            for (int k = 0; k < 2; ++k)
                if (steps.from[k] != none) next[edges[steps.from[k]]] = edges[steps.to[k]];
        }
    return next;
}

} // namespace

LuxMap lux_map(const Site& site, const LightScene& scene) {
    const PlanBox box = drawn_box(site, scene);
    LuxMap map;
    if (box.x_high < box.x_low) return map;
    const double width = box.x_high - box.x_low + 2 * margin;
    const double height = box.y_high - box.y_low + 2 * margin;
    map.step = std::max(smallest_step, std::sqrt(width * height / most_points));
    map.corner = {box.x_low - margin, box.y_low - margin};
    map.columns = static_cast<std::size_t>(width / map.step) + 1;
    map.rows = static_cast<std::size_t>(height / map.step) + 1;
    LitPoints lit;
    const Ground ground(site);
    for (std::size_t j = 0; j < map.rows; ++j)
        for (std::size_t i = 0; i < map.columns; ++i) {
            const PlanPoint p{map.corner.x + static_cast<double>(i) * map.step,
                              map.corner.y + static_cast<double>(j) * map.step};
            lit.points.push_back({p.x, p.y, ground.at(p)});
        }
    const SceneIndex index(site, scene, heights_of(lit.points));
    index.illuminate(lit);
    map.lux = std::move(lit.lux);
    for (std::size_t i = 0; i < map.lux.size(); ++i)
        if (map.lux[i] > 0 && in_building(site, index.areas(), on_plan(lit.points[i]))) map.lux[i] = 0;
    return map;
}

std::vector<double> isolux_levels(const LuxMap& map) {
    const double greatest = map.lux.empty() ? 0 : *std::max_element(map.lux.begin(), map.lux.end());
    std::vector<double> levels;
    for (const double level : {0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0})
        if (level <= greatest) levels.push_back(level);
    return levels;
}

std::vector<Isolux> isolux_lines(const LuxMap& map, const std::vector<double>& levels) {
    std::vector<Isolux> lines;
    const Mesh mesh(map);
    for (const double level : levels) {
        Isolux line{level, {}};
        Next next = connections(mesh, level);
        for (EdgeId start = 0; start < 2 * mesh.columns() * mesh.rows(); ++start) { // a fixed order of rings
            if (next.find(start) == next.end()) continue;
            std::vector<PlanPoint> ring;
            for (auto at = next.find(start); at != next.end();) {
                ring.push_back(mesh.crossing(at->first, level));
                const EdgeId to = at->second;
                next.erase(at);
                at = next.find(to);
            }
            line.rings.push_back(std::move(ring));
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

} // namespace rillwatt
