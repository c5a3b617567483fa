#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/check/assessment.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/plan/file_source.hpp"
#include "rillwatt/site/site.hpp"

#include <memory>
#include <string>
#include <vector>

namespace rillwatt {

/// A site file with its catalogs, read and found sound.
struct LoadedSite {
    std::string path;
    std::string text; ///< as it stands in the file
    std::shared_ptr<const Site> site;
    std::shared_ptr<const Catalog> catalog;
};

/// Which files a question about a site starts from.
struct SiteFiles {
    std::string site;                  ///< its file
    std::vector<std::string> catalogs; ///< further catalogs, whose entries win over all others
};

/// Reads a site file, the built-in catalogs, the catalogs the site names (relative to it) and the further
/// ones. What is wrong with any of these files comes back at once.
LoadResult<LoadedSite> load_site(const SiteFiles& names, FileSource& files);

/// The built-in catalogs and further ones, for what needs no site.
LoadResult<Catalog> load_catalogs(const std::vector<std::string>& more, FileSource& files);

/// The photometric files that the lights of the site are described by. A missing one is an input error.
LoadResult<PhotometricFiles> load_photometry(const LoadedSite& loaded, FileSource& files);

/// Errors between parts of a loaded site, moved to the lines of the values they are about.
std::vector<InputError> located(std::vector<InputError> errors, const LoadedSite& loaded);

} // namespace rillwatt
