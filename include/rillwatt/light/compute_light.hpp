#pragma once

#include "rillwatt/light/light_scene.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// Photometric files the fixtures of a site need, by the paths to read them from.
std::vector<std::string> photometric_paths(const Site& site, const Catalog& catalog);

/// The lights of a site, ready to be computed. A photometric file that is missing or malformed is an input
/// error with its file and line.
LoadResult<LightScene> load_light_scene(const Site& site, const Catalog& catalog,
                                        const SiteSolution* solution, const PhotometricFiles& files);

/// Level light (on a plane facing up) at these points.
std::vector<PointLight> level_light_at(const LightScene& scene, const std::vector<SpacePoint>& points);

/// Light on every walk and falls face, at the points asked for (level, facing up), and from every viewpoint.
/// Direct light only. Without a solution every lamp counts as at its rated volts.
LoadResult<LightResult> compute_light(const Site& site, const Catalog& catalog, const SiteSolution* solution,
                                      const PhotometricFiles& files,
                                      const std::vector<SpacePoint>& points = {});

} // namespace rillwatt
