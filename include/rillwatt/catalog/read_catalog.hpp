#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/document/field.hpp"
#include "rillwatt/finding/input_error.hpp"

#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

namespace rillwatt {

/// Reads a catalog file on top of `base`: an entry of the same kind and id replaces the earlier one. Every
/// entry is checked by itself; what entries say of one another is for `check_catalog`, when all files are
/// read.
LoadResult<Catalog> read_catalog(std::string_view text, const std::string& file, Catalog base = {});

/// Looks up the conductor table of every cable and the lead cable of every fixture, and copies each cable's
/// resistance into it. Returns what names nothing. Call it once, after the last catalog is read.
std::vector<InputError> check_catalog(Catalog& catalog);

/// A catalog file compiled into the program.
struct BuiltInFile {
    std::string_view name; ///< as below the source tree: "catalogs/cables.toml"
    std::string_view text;
};

const std::vector<BuiltInFile>& built_in_files();

/// All built-in catalogs read one after the other, not yet checked: further files may follow.
LoadResult<Catalog> read_built_in_catalog();

/// Ids of catalog entries.
using EntryNames = std::unordered_set<std::string_view>;

/// Adds all that stands in double quotes on one line of a catalog file: among it are the names of the entries
/// that it builds on.
void add_quoted(EntryNames& names, std::string_view text);

/// As much of the built-in catalogs as is needed by what names these entries: those, and the cables and
/// conductor tables they name in turn. For what looks entries up by the names it is given, and lists none.
LoadResult<Catalog> read_built_in_catalog(const EntryNames& named);

/// The tables of a catalog file and their keys.
std::vector<TableSpec> catalog_tables();

} // namespace rillwatt
