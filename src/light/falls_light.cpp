#include "rillwatt/light/falls_light.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

constexpr double largest_cell = 0.1; ///< metres

int cells_in(double size) { return std::max(1, static_cast<int>(std::ceil(size / largest_cell - 1e-9))); }

bool reached_through_water(const LightScene& scene, LitPoints face) {
    return std::any_of(scene.lights.begin(), scene.lights.end(), [&](const PlacedLight& light) {
        if (!light.water_level) return false;
        face.lux.assign(face.points.size(), 0);
        add_light(light, scene.obstacles, face);
        return spread_of(face.lux).greatest > 0;
    });
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

LitPoints falls_face(const Falls& falls) {
    LitPoints face;
    face.normal = falls_normal(falls);
    const int across = cells_in(distance(falls.lip_left, falls.lip_right).value());
    const int up = cells_in(falls.drop.value());
    for (int j = 0; j < up; ++j)
        for (int i = 0; i < across; ++i)
            face.points.push_back(falls_point(falls, (i + 0.5) / across, (j + 0.5) / up));
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

FallsLight falls_light(const LightScene& scene, const Falls& falls) {
    LitPoints face = falls_face(falls);
    illuminate(scene, face);
    FallsLight light = falls_light_of(face);
    light.through_water = reached_through_water(scene, std::move(face));
    return light;
}

} // namespace rillwatt
