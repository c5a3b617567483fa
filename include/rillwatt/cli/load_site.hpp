#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/check/assessment.hpp"
#include "rillwatt/cli/command.hpp"
#include "rillwatt/site/site.hpp"

#include <memory>
#include <optional>
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

/// Reads a site file, the built-in catalogs, the catalogs the site names (relative to it) and those of
/// `--catalog`. Every error of all these files goes to `console.err`, and nothing comes back.
std::optional<LoadedSite> load_site(const std::string& path, const std::vector<std::string>& more_catalogs,
                                    Console& console);

/// The `SITE` and `--catalog` of a command.
std::optional<LoadedSite> load_site(const Arguments& arguments, Console& console);

/// The built-in catalogs and those of `--catalog`, for commands that need no site.
std::optional<Catalog> load_catalogs(const std::vector<std::string>& more_catalogs, Console& console);

/// The photometric files that the fixtures on the site are described by. A missing file is an input error.
std::optional<PhotometricFiles> load_photometry(const LoadedSite& loaded, Console& console);

/// load_site, then assess.
std::optional<Assessment> load_and_assess(const Arguments& arguments, Console& console);

/// Writes each error as its own block.
void print_errors(const std::vector<InputError>& errors, Console& console);

/// As above, with errors between parts of the site moved to the lines of the values they are about.
void print_errors(std::vector<InputError> errors, const LoadedSite& loaded, Console& console);

} // namespace rillwatt
