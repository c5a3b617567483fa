#pragma once

#include "rillwatt/document/field.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// JSON Schema (draft 2020-12) of a TOML file whose tables are these, for editors that complete keys and mark
/// mistakes. It is made from the very lists the reader reads by. Text and ranges of lengths are left to the
/// reader.
std::string schema_json(const std::vector<TableSpec>& tables, const std::string& title);

} // namespace rillwatt
