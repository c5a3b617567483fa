#pragma once

#include "rillwatt/catalog/read_catalog.hpp"

namespace rillwatt {

/// A catalog file without the fixtures, transformers, pumps and accessories that are not named: each of their
/// lines is left empty, so that all others keep their numbers. Only for files written as the built-in ones
/// are: each table below a header of its own, at the beginning of a line.
std::string abridged(std::string_view text, const EntryNames& named);

} // namespace rillwatt
