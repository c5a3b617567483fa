#pragma once

#include "rillwatt/catalog/read_catalog.hpp"

#include <span>

namespace rillwatt {

/// The texts of catalog files, of each but the entries that are named, by `named` or by an entry that is;
/// each line of the others is left empty, so that the rest keep their numbers. A file without any such entry
/// is an empty text. Only for files written as the built-in ones are: each entry below a header of its own,
/// at the beginning of a line.
std::vector<std::string> abridged(std::span<const BuiltInFile> files, EntryNames named);

} // namespace rillwatt
