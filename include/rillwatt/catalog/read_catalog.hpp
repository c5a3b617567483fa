#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/document/field.hpp"
#include "rillwatt/finding/input_error.hpp"

#include <string>
#include <string_view>
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

/// The tables of a catalog file and their keys.
std::vector<TableSpec> catalog_tables();

} // namespace rillwatt
