#include "rillwatt/light/scene_index.hpp"

#include "rillwatt/light/falls_light.hpp"

#include <algorithm>

namespace rillwatt {
namespace {

PlanBox round(const PlacedLight& light, double reach) {
    PlanBox box;
    if (reach < 0) return box;
    box.include(light.pose.at.x, light.pose.at.y);
    return box.grown(reach);
}

constexpr double everywhere = 1e8; ///< metres

template<class Reach>
PlanIndex index_by(const LightScene& scene, Reach reach) {
    std::vector<PlanBox> boxes;
    for (const PlacedLight& light : scene.lights)
        boxes.push_back(round(light, reach(light)));
    return PlanIndex(boxes);
}

/// The same for how far lights reach.
template<class Reach>
PlanIndex index_by_reach(const LightScene& scene, Reach reach) {
    const bool few = scene.lights.size() <= so_few_that_all_count;
    return index_by(scene, [&](const PlacedLight& light) {
        const double far = reach(light);
        return few && far >= 0 ? everywhere : far;
    });
}

} // namespace

SceneIndex::SceneIndex(const Site& site, const LightScene& scene, const HeightRange& heights)
    : scene_(&scene), areas_(site), places_(index_by(scene, [](const PlacedLight&) { return 0.0; })),
      on_level_(
          index_by_reach(scene, [&](const PlacedLight& light) { return reach_on_level(light, heights); })),
      on_any_plane_(index_by_reach(
          scene, [&](const PlacedLight& light) { return reach_on_any_plane(light, heights); })) {}

std::vector<std::size_t> SceneIndex::reaching(const LitPoints& target, const PointBlock& block) const {
    return (target.normal == straight_up ? on_level_ : on_any_plane_).found(block.box);
}

void SceneIndex::illuminate(LitPoints& target) const {
    target.lux.assign(target.points.size(), 0);
    for (const PointBlock& block : blocks_of(target.points))
        for (const std::size_t i : reaching(target, block))
            add_light(scene_->lights[i], scene_->obstacles, target, block);
}

bool SceneIndex::lit_through_water(LitPoints target) const {
    target.lux.assign(target.points.size(), 0);
    for (const PointBlock& block : blocks_of(target.points))
        for (const std::size_t i : reaching(target, block))
            if (scene_->lights[i].water_level) add_light(scene_->lights[i], scene_->obstacles, target, block);
    return spread_of(target.lux).greatest > 0;
}

std::vector<std::size_t> SceneIndex::lights_near(PlanPoint place, double within) const {
    return places_.found(box_of(place, place).grown(within));
}

HeightRange lit_heights(const Site& site) {
    HeightRange heights;
    for (const Walk& walk : site.walks)
        heights.include(walk.elevation.value());
    for (const Falls& falls : site.falls)
        for (const double up : falls_rows(falls))
            heights.include(falls_point(falls, 0.5, up).z);
    return heights;
}

} // namespace rillwatt
