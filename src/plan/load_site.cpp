#include "rillwatt/plan/load_site.hpp"

#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/document/value_lines.hpp"
#include "rillwatt/site/read_site.hpp"

#include "user_catalogs.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

using Errors = std::vector<InputError>;

void sort_by_line(Errors& errors) {
    std::stable_sort(errors.begin(), errors.end(), [](const InputError& a, const InputError& b) {
        return a.location.line < b.location.line;
    });
}

/// A site and its catalogs as read, and everything wrong with them.
struct Reading {
    std::optional<Site> site;
    Catalog catalog;
    Errors errors;
};

Reading read_with_catalogs(const std::string& text, const SiteFiles& names, FileSource& files) {
    SiteDraft draft = read_site_draft(text, names.site);
    const std::vector<CatalogFile> users =
        read_user_catalogs(draft.site ? &*draft.site : nullptr, text, names.catalogs, files);
    Reading reading;
    Gathered gathered = gather_catalogs(users, read_built_in_catalog(), reading.errors);
    reading.catalog = std::move(gathered.catalog);
    if (draft.site && gathered.names_known)
        append(draft.errors, check_against_catalog(*draft.site, reading.catalog, text));
    if (draft.site && !(draft.errors.empty() && reading.errors.empty()))
        append(draft.errors, wiring_errors(*draft.site, reading.catalog));
    locate_values(draft.errors, names.site, text);
    add_source_lines(reading.errors, names.site, text);
    sort_by_line(draft.errors);
    reading.errors.insert(reading.errors.begin(), draft.errors.begin(), draft.errors.end());
    reading.site = std::move(draft.site);
    return reading;
}

} // namespace

LoadResult<Catalog> load_catalogs(const std::vector<std::string>& more, FileSource& files) {
    Errors errors;
    const std::vector<CatalogFile> users = read_user_catalogs(nullptr, {}, more, files);
    Catalog catalog = gather_catalogs(users, read_built_in_catalog(), errors).catalog;
    if (!errors.empty()) return {std::nullopt, std::move(errors)};
    return {std::move(catalog), {}};
}

LoadResult<LoadedSite> load_site(const SiteFiles& names, FileSource& files) {
    FileText file = files.read(names.site);
    if (!file.text) return {std::nullopt, {unreadable(names.site, file.problem, {})}};
    Reading reading = read_with_catalogs(*file.text, names, files);
    if (!reading.errors.empty()) return {std::nullopt, std::move(reading.errors)};
    return {LoadedSite{names.site, std::move(*file.text),
                       std::make_shared<const Site>(std::move(*reading.site)),
                       std::make_shared<const Catalog>(std::move(reading.catalog))},
            {}};
}

LoadResult<PhotometricFiles> load_photometry(const LoadedSite& loaded, FileSource& files) {
    PhotometricFiles read;
    Errors errors;
    for (const Fixture& fixture : loaded.site->fixtures) {
        const FixtureType* type = find_entry(loaded.catalog->fixtures, fixture.model);
        const auto* file = type == nullptr ? nullptr : std::get_if<FileDistribution>(&type->distribution);
        if (file == nullptr || read.contains(file->path)) continue;
        FileText text = files.read(file->path);
        if (!text.text) errors.push_back(unreadable(file->path, text.problem, type->location));
        read[file->path] = std::move(text.text).value_or("");
    }
    if (!errors.empty()) return {std::nullopt, std::move(errors)};
    return {std::move(read), {}};
}

std::vector<InputError> located(std::vector<InputError> errors, const LoadedSite& loaded) {
    locate_values(errors, loaded.path, loaded.text);
    return errors;
}

} // namespace rillwatt
