#include "user_catalogs.hpp"

#include "rillwatt/document/document.hpp"
#include "rillwatt/document/value_lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace rillwatt {

namespace {

/// Puts an empty entry for each name of one kind that a catalog file has.
template<class Map>
void stand_in(const Table& file, std::string_view kind, Map& entries) {
    const Value* value = file.find(kind);
    const Table* names = value == nullptr ? nullptr : value->table();
    if (names == nullptr) return;
    for (const Entry& entry : names->entries)
        entries.try_emplace(std::string(entry.key));
}

void keep_names(const CatalogFile& file, Gathered& gathered) {
    const LoadResult<Document> document = parse_document(*file.content.text, file.path);
    gathered.names_known = gathered.names_known && document;
    if (!document) return;
    const Table& root = document.value->root();
    stand_in(root, "cable", gathered.catalog.cables);
    stand_in(root, "fixture", gathered.catalog.fixtures);
    stand_in(root, "transformer", gathered.catalog.transformers);
    stand_in(root, "pump", gathered.catalog.pumps);
}

void add_catalog(const CatalogFile& file, Gathered& gathered, std::vector<InputError>& errors) {
    if (!file.content.text) {
        gathered.names_known = false;
        return errors.push_back(unreadable(file.path, file.content.problem, file.named_at));
    }
    LoadResult<Catalog> read = read_catalog(*file.content.text, file.path, gathered.catalog);
    if (!read.errors.empty()) keep_names(file, gathered);
    append(errors, std::move(read.errors));
    if (read.value) gathered.catalog = std::move(*read.value);
}

/// The line on which a name stands in quotes; 0 when it is written in another way.
int line_naming(std::string_view text, const std::string& name) {
    for (const char quote : {'"', '\''}) {
        const std::size_t at = text.find(quote + name + quote);
        if (at == std::string_view::npos) continue;
        return 1 + static_cast<int>(
                       std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
    }
    return 0;
}

} // namespace

std::vector<CatalogFile> read_user_catalogs(const Site* site, std::string_view text,
                                            const std::vector<std::string>& more, FileSource& files) {
    std::vector<CatalogFile> catalogs;
    if (site != nullptr)
        for (const std::string& name : site->settings.catalogs)
            catalogs.push_back({beside(site->file, name), {site->file, line_naming(text, name)}, {}});
    for (const std::string& path : more)
        catalogs.push_back({path, {}, {}});
    for (CatalogFile& file : catalogs)
        file.content = files.read(file.path);
    return catalogs;
}

Gathered gather_catalogs(const std::vector<CatalogFile>& users, LoadResult<Catalog> built_in,
                         std::vector<InputError>& errors) {
    append(errors, std::move(built_in.errors));
    Gathered gathered{std::move(built_in.value).value_or(Catalog())};
    for (const CatalogFile& file : users)
        add_catalog(file, gathered, errors);
    if (!errors.empty()) return gathered;
    errors = check_catalog(gathered.catalog);
    for (const CatalogFile& file : users)
        if (file.content.text) locate_values(errors, file.path, *file.content.text);
    return gathered;
}

InputError unreadable(const std::string& path, const std::string& problem, SourceLocation named_at) {
    if (named_at.file.empty()) named_at = {path, 0};
    return {.location = std::move(named_at),
            .found = fmt::format("the file `{}` cannot be read ({})", printable(path), problem),
            .expected = "the name of a file that can be read"};
}

void append(std::vector<InputError>& errors, std::vector<InputError> more) {
    errors.insert(errors.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

} // namespace rillwatt
