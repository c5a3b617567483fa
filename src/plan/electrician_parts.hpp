#pragma once

#include "rillwatt/plan/electrician_sheet.hpp"

namespace rillwatt {

/// Tables of the circuits: pumps, lights, both, spare; at most four circuits in a table.
std::vector<SheetTable> circuit_tables(const Assessment& assessment, const CircuitProposal& proposal);

/// Tables of the transformers, at most four in a table.
std::vector<SheetTable> supply_tables(const Assessment& assessment);

/// Bonding, cords, boxes and what else the code asks of a water feature.
std::vector<SheetLine> water_reminders(const SiteSettings& settings);

/// Cells of one row for every column.
template<class Columns, class Cell>
SheetRow sheet_row(std::string what, const Columns& columns, Cell cell, std::string source) {
    SheetRow row{std::move(what), {}, std::move(source)};
    for (const auto& column : columns)
        row.cells.push_back(cell(column));
    return row;
}

/// The most columns that stay readable on a printed page.
inline constexpr std::size_t sheet_columns = 4;

/// A distance in the site's units with one decimal.
std::string distance_text(const SiteSettings& settings, Metres distance);

/// "x 45.5 ft, y 13.5 ft; 10.3 ft from water"
std::string place_text(const Site& site, const std::optional<PlanPoint>& at);

/// Words with commas between.
std::string comma_separated(const std::vector<std::string>& words);

} // namespace rillwatt
