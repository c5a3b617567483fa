#include "rillwatt/plan/assess_site.hpp"

#include "rillwatt/light/compute_light.hpp"

namespace rillwatt {

LoadResult<Assessment> assess_site(const SiteFiles& names, FileSource& files) {
    LoadResult<LoadedSite> loaded = load_site(names, files);
    if (!loaded) return {std::nullopt, std::move(loaded.errors)};
    LoadResult<Assessment> assessed = assess(loaded.value->site, loaded.value->catalog);
    assessed.errors = located(std::move(assessed.errors), *loaded.value);
    return assessed;
}

LoadResult<Assessment> assess_with_light(const LoadedSite& loaded, FileSource& files,
                                         const std::vector<SpacePoint>& points) {
    LoadResult<PhotometricFiles> photometry = load_photometry(loaded, files);
    if (!photometry) return {std::nullopt, std::move(photometry.errors)};
    LoadResult<Assessment> assessed = assess(loaded.site, loaded.catalog, &*photometry.value);
    assessed.errors = located(std::move(assessed.errors), loaded);
    if (!assessed || points.empty()) return assessed;
    Assessment& assessment = *assessed.value;
    const auto scene =
        load_light_scene(*loaded.site, *loaded.catalog, &assessment.solution, *photometry.value);
    if (scene) assessment.light->points = level_light_at(*scene.value, points);
    return assessed;
}

} // namespace rillwatt
