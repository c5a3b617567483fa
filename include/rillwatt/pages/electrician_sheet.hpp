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
    std::string basis; ///< code, edition, supply, kind of building
    std::vector<std::string> cautions;
    std::vector<SheetTable> tables; ///< pump circuits, lighting circuits, supplies; at most four columns each
    SheetTable burial;              ///< cover by crossing and wiring method
    std::vector<SheetLine> open;    ///< what stays open, worst first
    std::vector<SheetLine> reminders; ///< bonding, cords, boxes
    std::vector<std::string> running_cost;
};

ElectricianSheet electrician_sheet(const Assessment& assessment);

/// The sheet as one self-contained page without script: one or two printed pages, letter or A4.
std::string electrician_html(const Assessment& assessment);

/// The sheet as plain text for a message: short lines, one circuit after the other.
std::string electrician_text(const Assessment& assessment);

/// kWh and money of a year, pumps against lights, in sentences.
std::vector<std::string> running_cost_lines(const Assessment& assessment);

} // namespace rillwatt
