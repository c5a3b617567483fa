#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/mains/circuit_proposal.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// One line of a table: what it is, one cell for each column, and where the figures come from.
struct SheetRow {
    std::string what;
    std::vector<std::string> cells;
    std::string source;
};

/// A table whose columns are circuits or transformers.
struct SheetTable {
    std::string title;
    std::vector<std::string> columns;
    std::vector<SheetRow> rows;
};

/// A sentence with the place it is written.
struct SheetLine {
    std::string text;
    std::string source;
};

/// All that the electrician is handed, in the order of the work. Texts are as users wrote them: writers
/// escape.
struct ElectricianSheet {
    std::string site;
    std::string basis;              ///< code, edition, supply, kind of building
    std::vector<SheetTable> tables; ///< pump circuits, lighting circuits, supplies; at most four columns each
    SheetTable burial;              ///< cover by crossing and wiring method
    std::vector<SheetLine> open;    ///< what stays open, worst first
    std::vector<SheetLine> reminders; ///< bonding, cords, boxes
    std::vector<std::string> running_cost;
};

ElectricianSheet electrician_sheet(const Assessment& assessment);

/// kWh and money of a year, pumps against lights, in sentences.
std::vector<std::string> running_cost_lines(const Assessment& assessment);

} // namespace rillwatt
