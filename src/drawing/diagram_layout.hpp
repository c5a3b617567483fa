#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/plan/solved_circuit.hpp"

#include "svg_parts.hpp"
#include <string>
#include <vector>

namespace rillwatt {

/// One node of the diagram with its words and its place.
struct DiagramNode {
    std::size_t node = 0; ///< number in its TransformerCircuit
    std::string part;     ///< id
    std::string name;     ///< above the line, after the symbol
    std::string figure;   ///< below the line: volts
    std::string cable;    ///< above the line that leads here: length and cable
    std::string current;  ///< below it: amperes
    bool bad = false;     ///< a lamp outside its window
    int depth = 0;        ///< 0: the start of a run
    SheetPoint at;        ///< centre of the symbol
    double line_from = 0; ///< x where the cable that leads here leaves the bus of its parent
};

/// One transformer's part of the diagram.
struct DiagramCircuit {
    const SolvedCircuit* solved = nullptr;
    std::vector<DiagramNode> nodes; ///< in the order of the circuit's nodes
    SheetBox box;                   ///< the transformer
};

/// The whole diagram, laid out: a row for each light at the end of a line, a column for each step away from
/// the transformer, columns as wide as their words.
struct DiagramLayout {
    std::vector<SolvedCircuit> solved;
    std::vector<DiagramCircuit> circuits;
    double width = 0;
    double height = 0;
};

DiagramLayout diagram_layout(const Assessment& assessment, double top);

/// Type size of the diagram's words.
constexpr double diagram_type = 11;

} // namespace rillwatt
