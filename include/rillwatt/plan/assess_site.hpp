#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/light/vector3.hpp"
#include "rillwatt/plan/load_site.hpp"

#include <vector>

namespace rillwatt {

/// Loads a site and computes all about it but the light.
LoadResult<Assessment> assess_site(const SiteFiles& names, FileSource& files);

/// Computes a loaded site with its light, and the level light at further points.
LoadResult<Assessment> assess_with_light(const LoadedSite& loaded, FileSource& files,
                                         const std::vector<SpacePoint>& points = {});

} // namespace rillwatt
