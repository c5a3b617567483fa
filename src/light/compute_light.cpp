#include "rillwatt/light/compute_light.hpp"

#include "rillwatt/light/falls_light.hpp"
#include "rillwatt/light/uplight.hpp"
#include "rillwatt/light/views.hpp"
#include "rillwatt/light/walk_light.hpp"

#include <utility>

namespace rillwatt {
namespace {

std::vector<std::string> types_on_plan(const Site& site) {
    std::vector<std::string> types;
    for (const Fixture& fixture : site.fixtures)
        if (fixture.at) types.push_back(fixture.model);
    return types;
}

FixtureLight fixture_light(const LightScene& scene, const FallsIndex& falls, const PlacedLight& light) {
    const LightDistribution& distribution = light.photometry->distribution;
    FixtureLight result;
    result.fixture = light.fixture;
    result.at = light.pose.at;
    result.lumens = Lumens(distribution.flux() * light.lumen_factor);
    result.dark = light.factor <= 0 || distribution.dark();
    if (!result.dark) result.wasted_upward = wasted_upward(scene.obstacles, falls, light);
    return result;
}

LightResult light_of(const Site& site, const LightScene& scene, const std::vector<SpacePoint>& points) {
    LightResult result;
    const SceneIndex index(site, scene, lit_heights(site));
    for (std::size_t i = 0; i < site.walks.size(); ++i) {
        result.walks.push_back(walk_light(index, site.walks[i]));
        result.walks.back().walk = i;
    }
    for (std::size_t i = 0; i < site.falls.size(); ++i) {
        result.falls.push_back(falls_light(index, site.falls[i]));
        result.falls.back().falls = i;
    }
    result.points = level_light_at(scene, points);
    for (std::size_t i = 0; i < site.viewpoints.size(); ++i)
        result.viewpoints.push_back(viewpoint_light(site, index, i));
    const FallsIndex falls(site);
    for (const PlacedLight& light : scene.lights)
        result.fixtures.push_back(fixture_light(scene, falls, light));
    return result;
}

} // namespace

std::vector<PointLight> level_light_at(const LightScene& scene, const std::vector<SpacePoint>& points) {
    LitPoints lit;
    lit.points = points;
    illuminate(scene, lit);
    std::vector<PointLight> result;
    for (std::size_t i = 0; i < points.size(); ++i)
        result.push_back({points[i], Lux(lit.lux[i])});
    return result;
}

std::vector<std::string> photometric_paths(const Site& site, const Catalog& catalog) {
    return photometric_paths(catalog, types_on_plan(site));
}

LoadResult<LightScene> load_light_scene(const Site& site, const Catalog& catalog,
                                        const SiteSolution* solution, const PhotometricFiles& files) {
    LoadResult<Photometry> photometry = prepare_photometry(catalog, types_on_plan(site), files);
    if (!photometry) return {std::nullopt, std::move(photometry.errors)};
    return {build_light_scene(site, catalog, solution, *photometry.value), {}};
}

LoadResult<LightResult> compute_light(const Site& site, const Catalog& catalog, const SiteSolution* solution,
                                      const PhotometricFiles& files, const std::vector<SpacePoint>& points) {
    LoadResult<Photometry> photometry = prepare_photometry(catalog, types_on_plan(site), files);
    if (!photometry) return {std::nullopt, std::move(photometry.errors)};
    const LightScene scene = build_light_scene(site, catalog, solution, *photometry.value);
    LightResult result = light_of(site, scene, points);
    result.mismatches = std::move(photometry.value->mismatches);
    result.remarks = std::move(photometry.value->remarks);
    return {std::move(result), {}};
}

} // namespace rillwatt
