#pragma once

#include <string>
#include <string_view>

namespace rillwatt {

/// Text of a user made safe to stand in HTML or SVG, between tags or inside a quoted attribute: markup
/// characters become entities, control characters and broken UTF-8 are made visible, and what no XML may hold
/// (U+FFFE, U+FFFF) becomes the replacement character.
std::string html_text(std::string_view text);

/// Text of a user as one CSV cell (RFC 4180), quoted where it must be. A cell that a spreadsheet would run as
/// a formula (it begins with = + - @, a tab or a line end) gets an apostrophe in front; control characters
/// are made visible.
std::string csv_text(std::string_view text);

/// A number as one CSV cell: at most `decimals` decimals, a point, no grouping; empty when it is not finite.
std::string csv_number(double value, int decimals);

/// Cells joined to one CSV record with its CR LF. The cells are already escaped.
template<class Cells>
std::string csv_record(const Cells& cells) {
    std::string record;
    bool first = true;
    for (const auto& cell : cells) {
        if (!first) record += ',';
        record += cell;
        first = false;
    }
    return record + "\r\n";
}

/// ` data-part="id"`, by which plan, diagram and tables find the same part.
std::string part_attribute(std::string_view id);

} // namespace rillwatt
