#include "rillwatt/cli/load_site.hpp"

#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/cli/file_access.hpp"
#include "rillwatt/cli/process_memory.hpp"
#include "rillwatt/document/value_lines.hpp"
#include "rillwatt/site/read_site.hpp"

#include "catalog_files.hpp"
#include <algorithm>
#include <filesystem>
#include <ostream>
#include <system_error>

namespace rillwatt {

namespace {

using Errors = std::vector<InputError>;

void sort_by_line(Errors& errors) {
    std::stable_sort(errors.begin(), errors.end(), [](const InputError& a, const InputError& b) {
        return a.location.line < b.location.line;
    });
}

/// Bytes of a file, 0 where nobody can tell.
std::size_t file_size(const std::string& path) {
    std::error_code fault;
    const std::uintmax_t bytes = std::filesystem::file_size(path, fault);
    return fault ? 0 : bytes;
}

/// A site and its catalogs as read, and everything wrong with them.
struct Reading {
    std::optional<Site> site;
    Catalog catalog;
    Errors errors;
};

Reading read_with_catalogs(const std::string& text, const std::string& path,
                           const std::vector<std::string>& more) {
    SiteDraft draft = read_site_draft(text, path);
    const std::vector<CatalogFile> users =
        read_user_catalogs(draft.site ? &*draft.site : nullptr, text, more);
    Reading reading;
    Gathered gathered = gather_catalogs(users, read_built_in_catalog(), reading.errors);
    reading.catalog = std::move(gathered.catalog);
    if (draft.site && gathered.names_known)
        append(draft.errors, check_against_catalog(*draft.site, reading.catalog, text));
    if (draft.site && !(draft.errors.empty() && reading.errors.empty()))
        append(draft.errors, wiring_errors(*draft.site, reading.catalog));
    locate_values(draft.errors, path, text);
    add_source_lines(reading.errors, path, text);
    sort_by_line(draft.errors);
    reading.errors.insert(reading.errors.begin(), draft.errors.begin(), draft.errors.end());
    reading.site = std::move(draft.site);
    return reading;
}

} // namespace

void print_errors(const std::vector<InputError>& errors, Console& console) {
    for (const InputError& error : errors)
        console.err << input_error_text(error);
}

void print_errors(std::vector<InputError> errors, const LoadedSite& loaded, Console& console) {
    locate_values(errors, loaded.path, loaded.text);
    print_errors(errors, console);
}

std::optional<Catalog> load_catalogs(const std::vector<std::string>& more_catalogs, Console& console) {
    Errors errors;
    const std::vector<CatalogFile> users = read_user_catalogs(nullptr, {}, more_catalogs);
    Catalog catalog = gather_catalogs(users, read_built_in_catalog(), errors).catalog;
    print_errors(errors, console);
    if (!errors.empty()) return std::nullopt;
    return catalog;
}

std::optional<LoadedSite> load_site(const std::string& path, const std::vector<std::string>& more_catalogs,
                                    Console& console) {
    prepare_memory_for(file_size(path));
    FileText file = read_file(path);
    if (!file.text) {
        print_errors({unreadable(path, file.problem, {})}, console);
        return std::nullopt;
    }
    Reading reading = read_with_catalogs(*file.text, path, more_catalogs);
    print_errors(reading.errors, console);
    if (!reading.errors.empty()) return std::nullopt;
    return LoadedSite{path, std::move(*file.text), std::make_shared<const Site>(std::move(*reading.site)),
                      std::make_shared<const Catalog>(std::move(reading.catalog))};
}

std::optional<LoadedSite> load_site(const Arguments& arguments, Console& console) {
    return load_site(arguments.text("SITE"), arguments.all("--catalog"), console);
}

std::optional<PhotometricFiles> load_photometry(const LoadedSite& loaded, Console& console) {
    PhotometricFiles files;
    Errors errors;
    for (const Fixture& fixture : loaded.site->fixtures) {
        const FixtureType* type = find_entry(loaded.catalog->fixtures, fixture.model);
        const auto* file = type == nullptr ? nullptr : std::get_if<FileDistribution>(&type->distribution);
        if (file == nullptr || files.contains(file->path)) continue;
        FileText read = read_file(file->path);
        if (!read.text) errors.push_back(unreadable(file->path, read.problem, type->location));
        files[file->path] = read.text.value_or("");
    }
    print_errors(errors, console);
    if (!errors.empty()) return std::nullopt;
    return files;
}

std::optional<Assessment> load_and_assess(const Arguments& arguments, Console& console) {
    std::optional<LoadedSite> loaded = load_site(arguments, console);
    if (!loaded) return std::nullopt;
    LoadResult<Assessment> assessed = assess(loaded->site, loaded->catalog);
    print_errors(std::move(assessed.errors), *loaded, console);
    return std::move(assessed.value);
}

} // namespace rillwatt
