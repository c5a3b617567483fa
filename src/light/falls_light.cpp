#include "rillwatt/light/falls_light.hpp"

#include "mesh_cells.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

constexpr double usual_cell = 0.1; ///< metres

/// Cells of a face: so many from side to side, so many from base to lip.
struct FaceCells {
    int across = 1;
    int up = 1;
};

FaceCells face_cells(const Falls& falls, double cell) {
    return {cells_along(distance(falls.lip_left, falls.lip_right).value(), cell),
            cells_along(falls.drop.value(), cell)};
}

} // namespace

Vector3 falls_normal(const Falls& falls) {
    const double dx = falls.lip_right.x - falls.lip_left.x;
    const double dy = falls.lip_right.y - falls.lip_left.y;
    const double width = std::hypot(dx, dy);
    return width > 0 ? Vector3{dy / width, -dx / width, 0} : Vector3{1, 0, 0};
}

SpacePoint falls_point(const Falls& falls, double across, double up) {
    return {falls.lip_left.x + across * (falls.lip_right.x - falls.lip_left.x),
            falls.lip_left.y + across * (falls.lip_right.y - falls.lip_left.y),
            falls.base.value() + up * falls.drop.value()};
}

Metres falls_cell(const Falls& falls) {
    return Metres(cell_for(usual_cell, [&](double cell) {
        const FaceCells cells = face_cells(falls, cell);
        return static_cast<double>(cells.across) * cells.up;
    }));
}

std::vector<double> falls_rows(const Falls& falls) {
    const int up = face_cells(falls, falls_cell(falls).value()).up;
    std::vector<double> rows;
    for (int j = 0; j < up; ++j)
        rows.push_back((j + 0.5) / up);
    return rows;
}

LitPoints falls_face(const Falls& falls) {
    LitPoints face;
    face.normal = falls_normal(falls);
    const int across = face_cells(falls, falls_cell(falls).value()).across;
    for (const double up : falls_rows(falls))
        for (int i = 0; i < across; ++i)
            face.points.push_back(falls_point(falls, (i + 0.5) / across, up));
    return face;
}

FallsLight falls_light_of(const LitPoints& lit) {
    const LuxSpread spread = spread_of(lit.lux);
    const auto cells =
        std::count_if(lit.lux.begin(), lit.lux.end(), [](double lux) { return lux >= falls_lit_lux; });
    FallsLight light;
    light.mean = Lux(spread.mean);
    light.minimum = Lux(spread.least);
    light.maximum = Lux(spread.greatest);
    light.lit_share = lit.lux.empty() ? 0 : static_cast<double>(cells) / static_cast<double>(lit.lux.size());
    return light;
}

FallsLight falls_light(const SceneIndex& scene, const Falls& falls) {
    LitPoints face = falls_face(falls);
    scene.illuminate(face);
    FallsLight light = falls_light_of(face);
    light.cell = falls_cell(falls);
    light.coarse = light.cell.value() > usual_cell;
    light.through_water = scene.lit_through_water(std::move(face));
    return light;
}

} // namespace rillwatt
