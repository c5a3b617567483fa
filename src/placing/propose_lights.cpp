#include "rillwatt/placing/propose_lights.hpp"

#include <fmt/format.h>

#include "workbench.hpp"
#include <utility>

namespace rillwatt {
namespace {

std::vector<InputError> unknown_models(const Catalog& catalog, const PlacingOptions& options) {
    std::vector<std::string> known;
    for (const auto& [id, type] : catalog.fixtures)
        known.push_back(id);
    std::vector<InputError> errors;
    for (const std::string& model : options.models) {
        if (catalog.fixtures.count(model) > 0) continue;
        const std::optional<std::string> nearest = nearest_spelling(model, known);
        errors.push_back(
            {{"--model", 0},
             fmt::format("no fixture `{}` in the catalogs", model),
             nearest ? fmt::format("a catalog key; the nearest is `{}`", *nearest) : "a catalog key",
             {}});
    }
    return errors;
}

} // namespace

LoadResult<PlacingProposal> propose_lights(const Site& site, const Catalog& catalog,
                                           const SiteSolution* solution, const PhotometricFiles& files,
                                           const PlacingOptions& options) {
    std::vector<InputError> errors = unknown_models(catalog, options);
    LoadResult<LightScene> scene = load_light_scene(site, catalog, solution, files);
    LoadResult<Photometry> offer = prepare_photometry(catalog, types_on_offer(site, catalog, options), files);
    errors.insert(errors.end(), scene.errors.begin(), scene.errors.end());
    if (scene) errors.insert(errors.end(), offer.errors.begin(), offer.errors.end());
    if (!errors.empty()) return {std::nullopt, std::move(errors)};
    Workbench bench(site, catalog, std::move(*scene.value), std::move(*offer.value), options);
    PlacingProposal proposal;
    for (const Walk& walk : site.walks)
        propose_for_walk(bench, walk, proposal);
    for (const Falls& falls : site.falls)
        propose_for_falls(bench, falls, proposal);
    proposal.lights = bench.take_lights();
    return {std::move(proposal), {}};
}

} // namespace rillwatt
