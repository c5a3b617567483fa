#include "rillwatt/plan/place_report.hpp"

#include "rillwatt/document/document_edit.hpp"
#include "rillwatt/light/type_photometry.hpp"
#include "rillwatt/site/read_site.hpp"

namespace rillwatt {

namespace {

/// Photometric files of the lights that stand and of those on offer.
LoadResult<PhotometricFiles> photometry_for(const LoadedSite& loaded, const PlacingOptions& options,
                                            FileSource& files) {
    LoadResult<PhotometricFiles> read = load_photometry(loaded, files);
    if (!read) return read;
    for (const std::string& path :
         photometric_paths(*loaded.catalog, types_on_offer(*loaded.site, *loaded.catalog, options))) {
        FileText text = files.read(path);
        if (text.text)
            read.value->emplace(path, std::move(*text.text)); // a missing one is told with its catalog line
    }
    return read;
}

LoadResult<PlacingProposal> propose(const LoadedSite& loaded, const PhotometricFiles& photometry,
                                    const PlacingOptions& options) {
    LoadResult<Assessment> now = assess(loaded.site, loaded.catalog);
    if (!now) return {std::nullopt, located(std::move(now.errors), loaded)};
    return propose_lights(*loaded.site, *loaded.catalog, &now.value->solution, photometry, options);
}

/// A site file computed with its light.
LoadResult<Assessment> assess_text(const std::string& text, const LoadedSite& loaded,
                                   const PhotometricFiles& photometry) {
    LoadResult<Site> site = read_site(text, loaded.path);
    if (!site) return {std::nullopt, std::move(site.errors)};
    return assess(std::make_shared<const Site>(std::move(*site.value)), loaded.catalog, &photometry);
}

} // namespace

std::string appended_text(const std::string& toml) { return toml.empty() ? "" : "\n" + toml; }

LoadResult<PlaceReport> report_placing(const LoadedSite& loaded, const PlacingOptions& options,
                                       FileSource& files) {
    const LoadResult<PhotometricFiles> photometry = photometry_for(loaded, options, files);
    if (!photometry) return {std::nullopt, photometry.errors};
    LoadResult<PlacingProposal> proposal = propose(loaded, *photometry.value, options);
    if (!proposal) return {std::nullopt, std::move(proposal.errors)};
    std::string toml = proposal_toml(*proposal.value, loaded.site->settings);
    LoadResult<std::string> text = edited_document(loaded.text, loaded.path, {}, appended_text(toml));
    if (!text) return {std::nullopt, std::move(text.errors)};
    LoadResult<Assessment> outcome = assess_text(*text.value, loaded, *photometry.value);
    if (!outcome) return {std::nullopt, std::move(outcome.errors)};
    return {PlaceReport{std::move(*proposal.value), std::move(toml), std::move(*text.value),
                        std::move(*outcome.value)},
            {}};
}

} // namespace rillwatt
