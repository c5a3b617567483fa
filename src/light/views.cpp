#include "rillwatt/light/views.hpp"

#include "rillwatt/layout/places.hpp"
#include "rillwatt/light/falls_light.hpp"

#include <algorithm>
#include <map>

namespace rillwatt {
namespace {

constexpr int seen_across = 9; ///< points a face is judged at
constexpr int seen_up = 5;

/// Areas the viewer is in or leans on: looked out of, or over.
std::vector<std::size_t> high_areas(const Site& site, std::vector<std::size_t> areas) {
    std::erase_if(areas, [&](std::size_t i) { return site.areas[i].height.value() <= 0; });
    return areas;
}

std::vector<std::size_t> joined(std::vector<std::size_t> a, const std::vector<std::size_t>& b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
}

/// How far inside its field angle a light shows itself along a line; empty when it does not.
std::optional<Glare> within_field(const PlacedLight& light, SpacePoint towards) {
    const Vector3 line = from_to(light.pose.at, towards);
    const double far = length(line);
    if (far <= 0 || far > glare_reach) return {};
    const LocalDirection direction = light.pose.local((1 / far) * line);
    const double angle = std::acos(std::clamp(direction.along, -1.0, 1.0));
    const double field = light.photometry->distribution.half_field(direction);
    if (angle > field + 1e-9) return {};
    Glare glare;
    glare.fixture = light.fixture;
    glare.angle = Degrees(angle / degree);
    glare.turn_by = Degrees(std::max(0.0, (field - angle) / degree));
    return glare;
}

std::optional<Glare> direct_glare(const LightScene& scene, const PlacedLight& light, SpacePoint eye,
                                  const std::vector<std::size_t>& beside_eye) {
    std::optional<Glare> glare = within_field(light, eye);
    if (!glare) return {};
    if (scene.obstacles.blocking_area(light.pose.at, eye, joined(light.own_areas, beside_eye))) return {};
    return glare;
}

/// By way of one still surface: the line to the eye's mirror image has to cross that water.
std::optional<Glare> mirrored_glare(const LightScene& scene, const PlacedLight& light, SpacePoint eye,
                                    const std::vector<std::size_t>& beside_eye, const AreaIndex& areas,
                                    std::size_t area, double level) {
    if (light.pose.at.z <= level || eye.z <= level) return {};
    const SpacePoint image{eye.x, eye.y, 2 * level - eye.z};
    std::optional<Glare> glare = within_field(light, image);
    if (!glare) return {};
    const double share = (light.pose.at.z - level) / (light.pose.at.z - image.z);
    const SpacePoint bounce = moved(light.pose.at, share * from_to(light.pose.at, image));
    if (!areas.covers(area, on_plan(bounce))) return {};
    const std::vector<std::size_t> ignored = joined(light.own_areas, beside_eye);
    if (scene.obstacles.blocking_area(light.pose.at, bounce, ignored) ||
        scene.obstacles.blocking_area(bounce, eye, ignored))
        return {};
    glare->mirrored = true;
    return glare;
}

} // namespace

SpacePoint eye_of(const Viewpoint& viewpoint) {
    return {viewpoint.at.x, viewpoint.at.y, viewpoint.eye.value()};
}

namespace {

Sightline sightline_past(const Site& site, const Obstacles& obstacles, const Viewpoint& viewpoint,
                         std::size_t falls, const std::vector<std::size_t>& beside_eye) {
    const Falls& face = site.falls[falls];
    const SpacePoint eye = eye_of(viewpoint);
    std::map<std::size_t, int> blocked;
    int seen = 0;
    for (int j = 0; j < seen_up; ++j)
        for (int i = 0; i < seen_across; ++i) {
            const SpacePoint point = falls_point(face, (i + 0.5) / seen_across, (j + 0.5) / seen_up);
            const auto area = obstacles.blocking_area(eye, point, beside_eye);
            if (area)
                ++blocked[*area];
            else
                ++seen;
        }
    Sightline line;
    line.falls = falls;
    line.seen_share = static_cast<double>(seen) / (seen_across * seen_up);
    line.visible = 2 * seen >= seen_across * seen_up;
    line.from_behind = dot(falls_normal(face), from_to(falls_point(face, 0.5, 0.5), eye)) < 0;
    if (line.visible) return line;
    const auto most = std::max_element(blocked.begin(), blocked.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    line.blocked_by = site.areas[most->first].id;
    return line;
}

/// The glare of one light, directly and by way of the first surface that mirrors it.
void add_glare(const Site& site, const LightScene& scene, const AreaIndex& areas, const PlacedLight& light,
               SpacePoint eye, const std::vector<std::size_t>& beside_eye, std::vector<Glare>& found) {
    if (light.factor <= 0 || light.photometry->distribution.dark()) return;
    if (const auto glare = direct_glare(scene, light, eye, beside_eye)) found.push_back(*glare);
    for (const std::size_t i : areas.near(box_of(on_plan(light.pose.at), on_plan(eye)))) {
        if (site.areas[i].kind != AreaKind::water) continue;
        const auto glare =
            mirrored_glare(scene, light, eye, beside_eye, areas, i, site.areas[i].level.value());
        if (!glare) continue;
        found.push_back(*glare);
        return;
    }
}

} // namespace

Sightline sightline(const Site& site, const Obstacles& obstacles, const Viewpoint& viewpoint,
                    std::size_t falls) {
    return sightline_past(site, obstacles, viewpoint, falls,
                          high_areas(site, AreaIndex(site).covering(viewpoint.at)));
}

Sightline sightline(const Site& site, const SceneIndex& scene, const Viewpoint& viewpoint,
                    std::size_t falls) {
    return sightline_past(site, scene.scene().obstacles, viewpoint, falls,
                          high_areas(site, scene.areas().covering(viewpoint.at)));
}

std::vector<Glare> glare_at(const Site& site, const LightScene& scene, const Viewpoint& viewpoint) {
    const SpacePoint eye = eye_of(viewpoint);
    const auto within_reach = [&](const PlacedLight& light) {
        return distance(on_plan(light.pose.at), viewpoint.at).value() <= glare_reach;
    };
    if (std::none_of(scene.lights.begin(), scene.lights.end(), within_reach)) return {};
    const AreaIndex areas(site);
    const std::vector<std::size_t> beside_eye = high_areas(site, areas.covering(viewpoint.at));
    std::vector<Glare> found;
    for (const PlacedLight& light : scene.lights)
        if (within_reach(light)) add_glare(site, scene, areas, light, eye, beside_eye, found);
    return found;
}

std::vector<Glare> glare_at(const Site& site, const SceneIndex& scene, const Viewpoint& viewpoint) {
    const SpacePoint eye = eye_of(viewpoint);
    const std::vector<std::size_t> beside_eye = high_areas(site, scene.areas().covering(viewpoint.at));
    std::vector<Glare> found;
    for (const std::size_t i : scene.lights_near(viewpoint.at, glare_reach))
        add_glare(site, scene.scene(), scene.areas(), scene.scene().lights[i], eye, beside_eye, found);
    return found;
}

ViewpointLight viewpoint_light(const Site& site, const SceneIndex& scene, std::size_t viewpoint) {
    const Viewpoint& from = site.viewpoints[viewpoint];
    ViewpointLight light;
    light.viewpoint = viewpoint;
    for (std::size_t i = 0; i < site.falls.size(); ++i) {
        const bool looked_at = from.looks_at.empty() || std::find(from.looks_at.begin(), from.looks_at.end(),
                                                                  site.falls[i].id) != from.looks_at.end();
        if (looked_at) light.sees.push_back(sightline(site, scene, from, i));
    }
    light.glare = glare_at(site, scene, from);
    return light;
}

} // namespace rillwatt
