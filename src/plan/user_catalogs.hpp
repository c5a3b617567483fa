#pragma once

#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/plan/file_source.hpp"
#include "rillwatt/site/site.hpp"

namespace rillwatt {

/// A catalog of the user's, and where it is named.
struct CatalogFile {
    std::string path;
    SourceLocation named_at;
    FileText content;
};

/// The catalogs that the site names (relative to it), if there is one, and further ones. `text` is that of
/// the site file.
std::vector<CatalogFile> read_user_catalogs(const Site* site, std::string_view text,
                                            const std::vector<std::string>& more, FileSource& files);

/// The catalogs as read. Where one has errors its names stand for its entries, so that those of the site can
/// still be looked up; where not even its names are known, looking up would accuse the site of what is the
/// catalog's fault.
struct Gathered {
    Catalog catalog;
    bool names_known = true;
};

/// The built-in catalogs and on top of them the user's; what is wrong with them is added to `errors`.
Gathered gather_catalogs(const std::vector<CatalogFile>& users, LoadResult<Catalog> built_in,
                         std::vector<InputError>& errors);

/// "the file `x.toml` cannot be read (No such file or directory)", where it is named or, if nowhere, there.
InputError unreadable(const std::string& path, const std::string& problem, SourceLocation named_at);

void append(std::vector<InputError>& errors, std::vector<InputError> more);

} // namespace rillwatt
