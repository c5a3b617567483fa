#pragma once

#include "rillwatt/document/field.hpp"
#include "rillwatt/text/text_style.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// What one key is for, for people.
struct KeyWords {
    std::string_view table; ///< its heading
    std::string_view key;
    std::string_view says;      ///< one sentence without its full stop
    std::string_view otherwise; ///< a value as written in the file, or words; empty: nothing is taken for it
    bool is_value = true;       ///< `otherwise` is a value
};

/// The words of every key of the site file and of catalogs.
std::span<const KeyWords> all_key_words();

/// How a table is written: "[site]", "[[circuit]]", "[cable.ID]"; a nested one and the top of the file as
/// they are named.
std::string table_heading(const TableSpec& table);

/// The words of one key of a table so headed, or null.
const KeyWords* key_words(std::string_view table, std::string_view key);

/// Every table and key of a file: what it is for, what it takes, and what counts when it is left out.
std::string schema_text(const std::vector<TableSpec>& tables, const TextStyle& style);

} // namespace rillwatt
