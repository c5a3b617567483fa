#include "rillwatt/check/assessment.hpp"

#include "rillwatt/light/compute_light.hpp"
#include "rillwatt/light/isolux.hpp"

namespace rillwatt {

LoadResult<Assessment> assess(std::shared_ptr<const Site> site, std::shared_ptr<const Catalog> catalog,
                              const PhotometricFiles* photometry) {
    Assessment result;
    result.lengths = measure_lengths(*site);
    LoadResult<SiteCircuits> circuits = build_circuits(*site, *catalog, result.lengths);
    if (!circuits) return {std::nullopt, std::move(circuits.errors)};
    result.circuits = std::move(*circuits.value);
    result.solution = solve_site(*site, result.circuits);
    result.breaches = find_breaches(*site, result.circuits, result.solution);
    if (photometry != nullptr) {
        LoadResult<LightResult> light = compute_light(*site, *catalog, &result.solution, *photometry);
        if (!light) return {std::nullopt, std::move(light.errors)};
        result.light = std::move(light.value);
        if (const auto scene = load_light_scene(*site, *catalog, &result.solution, *photometry))
            result.light->map = lux_map(*site, *scene.value);
    }
    result.mains = summarise_mains(*site, *catalog, result.circuits, result.solution);
    const AreaIndex areas(*site);
    result.findings = run_rules({.site = *site,
                                 .catalog = *catalog,
                                 .areas = areas,
                                 .lengths = result.lengths,
                                 .circuits = result.circuits,
                                 .solution = result.solution,
                                 .breaches = result.breaches,
                                 .mains = result.mains,
                                 .light = result.light ? &*result.light : nullptr});
    result.site = std::move(site);
    result.catalog = std::move(catalog);
    return {std::move(result), {}};
}

} // namespace rillwatt
