#pragma once

#include "rillwatt/check/rule.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/light/light_result.hpp"
#include "rillwatt/mains/mains_summary.hpp"

#include <memory>
#include <optional>

namespace rillwatt {

/// One site with everything computed about it: what writers are handed. Writers compute nothing.
struct Assessment {
    std::shared_ptr<const Site> site;
    std::shared_ptr<const Catalog> catalog; ///< the circuits point into it
    SiteLengths lengths;
    SiteCircuits circuits;
    SiteSolution solution;
    std::vector<Breach> breaches; ///< the limits that it breaks
    MainsSummary mains;
    std::optional<LightResult> light;
    std::vector<Finding> findings; ///< worst first
};

/// Measures, builds, solves and checks a site. Input errors (a loop of parts, a tap that does not exist) come
/// back instead of an assessment. Light is computed only when the photometric files are handed in.
LoadResult<Assessment> assess(std::shared_ptr<const Site> site, std::shared_ptr<const Catalog> catalog,
                              const PhotometricFiles* photometry = nullptr);

} // namespace rillwatt
