#include "rillwatt/cli/load_site.hpp"

#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/cli/file_access.hpp"
#include "rillwatt/cli/process_memory.hpp"
#include "rillwatt/document/document.hpp"
#include "rillwatt/site/read_site.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <ostream>
#include <system_error>

namespace rillwatt {

namespace {

using Errors = std::vector<InputError>;

void append(Errors& errors, Errors more) {
    errors.insert(errors.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

void sort_by_line(Errors& errors) {
    std::stable_sort(errors.begin(), errors.end(), [](const InputError& a, const InputError& b) {
        return a.location.line < b.location.line;
    });
}

InputError cannot_read(const std::string& path, const std::string& problem, SourceLocation named_at) {
    if (named_at.file.empty()) named_at = {path, 0};
    return {.location = std::move(named_at),
            .found = fmt::format("the file `{}` cannot be read ({})", printable(path), problem),
            .expected = "the name of a file that can be read"};
}

/// Bytes of a file, 0 where nobody can tell.
std::size_t file_size(const std::string& path) {
    std::error_code fault;
    const std::uintmax_t bytes = std::filesystem::file_size(path, fault);
    return fault ? 0 : bytes;
}

/// Puts an empty entry for each name of one kind that a catalog file has.
template<class Map>
void stand_in(const Table& file, std::string_view kind, Map& entries) {
    const Value* value = file.find(kind);
    const Table* names = value == nullptr ? nullptr : value->table();
    if (names == nullptr) return;
    for (const Entry& entry : names->entries)
        entries.try_emplace(std::string(entry.key));
}

/// The catalogs as read. Where one has errors its names stand for its entries, so that those of the site can
/// still be looked up; where not even its names are known, looking up would accuse the site of what is the
/// catalog's fault.
struct Gathered {
    Catalog catalog;
    bool names_known = true;

    void keep_names(const std::string& text, const std::string& path) {
        const LoadResult<Document> document = parse_document(text, path);
        names_known = names_known && document;
        if (!document) return;
        stand_in(document.value->root(), "cable", catalog.cables);
        stand_in(document.value->root(), "fixture", catalog.fixtures);
        stand_in(document.value->root(), "transformer", catalog.transformers);
        stand_in(document.value->root(), "pump", catalog.pumps);
    }
};

/// Adds one catalog file; errors are gathered.
void add_catalog(const std::string& path, const SourceLocation& named_at, Gathered& gathered,
                 Errors& errors) {
    FileText file = read_file(path);
    if (!file.text) {
        gathered.names_known = false;
        return errors.push_back(cannot_read(path, file.problem, named_at));
    }
    LoadResult<Catalog> read = read_catalog(*file.text, path, gathered.catalog);
    if (!read.errors.empty()) gathered.keep_names(*file.text, path);
    append(errors, std::move(read.errors));
    if (read.value) gathered.catalog = std::move(*read.value);
}

std::string beside(const std::string& file, const std::string& name) {
    const std::filesystem::path path(name);
    return path.is_absolute() ? name : (std::filesystem::path(file).parent_path() / path).string();
}

Gathered gather_catalogs(const Site* site, const std::vector<std::string>& more, LoadResult<Catalog> built_in,
                         Errors& errors) {
    append(errors, std::move(built_in.errors));
    Gathered gathered{std::move(built_in.value).value_or(Catalog())};
    if (site != nullptr)
        for (const std::string& name : site->settings.catalogs)
            add_catalog(beside(site->file, name), {site->file, 0}, gathered, errors);
    for (const std::string& path : more)
        add_catalog(path, {}, gathered, errors);
    if (errors.empty()) append(errors, check_catalog(gathered.catalog));
    return gathered;
}

void add_names(EntryNames& names, const std::optional<std::vector<std::string>>& listed) {
    if (listed) names.insert(listed->begin(), listed->end());
}

/// What the site looks up in the catalogs; cables are not among it, for they are always read.
EntryNames named_entries(const Site& site) {
    EntryNames names;
    std::string_view last; // lights of one kind often follow each other
    for (const Fixture& fixture : site.fixtures) {
        if (fixture.model != last) names.insert(fixture.model);
        last = fixture.model;
    }
    for (const Transformer& transformer : site.transformers)
        if (transformer.model) names.insert(*transformer.model);
    for (const Pump& pump : site.pumps)
        names.insert(pump.model);
    add_names(names, site.stock.transformers);
    add_names(names, site.stock.fixtures);
    return names;
}

/// A site and its catalogs as read, and everything wrong with them.
struct Reading {
    std::optional<Site> site;
    Catalog catalog;
    Errors errors;
};

Reading read_with_catalogs(const std::string& text, const std::string& path,
                           const std::vector<std::string>& more, BuiltInPart part) {
    SiteDraft draft = read_site_draft(text, path);
    const bool only_named = part == BuiltInPart::named && draft.site;
    LoadResult<Catalog> built_in =
        only_named ? read_built_in_catalog(named_entries(*draft.site)) : read_built_in_catalog();
    Reading reading;
    Gathered gathered =
        gather_catalogs(draft.site ? &*draft.site : nullptr, more, std::move(built_in), reading.errors);
    reading.catalog = std::move(gathered.catalog);
    if (draft.site && gathered.names_known)
        append(draft.errors, check_against_catalog(*draft.site, reading.catalog, text));
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

std::optional<Catalog> load_catalogs(const std::vector<std::string>& more_catalogs, Console& console) {
    Errors errors;
    Catalog catalog = gather_catalogs(nullptr, more_catalogs, read_built_in_catalog(), errors).catalog;
    print_errors(errors, console);
    if (!errors.empty()) return std::nullopt;
    return catalog;
}

std::optional<LoadedSite> load_site(const std::string& path, const std::vector<std::string>& more_catalogs,
                                    Console& console, BuiltInPart built_in) {
    prepare_memory_for(file_size(path));
    FileText file = read_file(path);
    if (!file.text) {
        print_errors({cannot_read(path, file.problem, {})}, console);
        return std::nullopt;
    }
    Reading reading = read_with_catalogs(*file.text, path, more_catalogs, built_in);
    // Errors name the nearest entry of all.
    if (!reading.errors.empty() && built_in == BuiltInPart::named)
        reading = read_with_catalogs(*file.text, path, more_catalogs, BuiltInPart::all);
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
        if (!read.text) errors.push_back(cannot_read(file->path, read.problem, type->location));
        files[file->path] = read.text.value_or("");
    }
    print_errors(errors, console);
    if (!errors.empty()) return std::nullopt;
    return files;
}

std::optional<Assessment> load_and_assess(const Arguments& arguments, Console& console,
                                          BuiltInPart built_in) {
    std::optional<LoadedSite> loaded =
        load_site(arguments.text("SITE"), arguments.all("--catalog"), console, built_in);
    if (!loaded) return std::nullopt;
    LoadResult<Assessment> assessed = assess(loaded->site, loaded->catalog);
    print_errors(assessed.errors, console);
    return std::move(assessed.value);
}

} // namespace rillwatt
