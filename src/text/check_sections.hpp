#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/text/text_style.hpp"

#include <string>
#include <string_view>

namespace rillwatt {

// The sections of the text of a check. Each starts with its heading and ends in a newline; one that has
// nothing to show is empty. The longest is written at the end of what is there already.

void append_lamp_table(std::string& out, const Assessment& assessment, const TextStyle& style);
std::string transformer_table_text(const Assessment& assessment, const TextStyle& style);
std::string run_table_text(const Assessment& assessment, const TextStyle& style);

/// Circuits with pumps, circuits with lights, circuits with both, each kind under a heading of its own.
std::string branch_circuits_text(const Assessment& assessment, const TextStyle& style);

/// Energy and money of a year, pumps apart from lights.
std::string running_cost_text(const Assessment& assessment, const TextStyle& style);

/// One branch circuit with what is on it.
std::string branch_circuit_text(const Assessment& assessment, const MainsCircuit& circuit,
                                const TextStyle& style);

/// A ratio as ten small blocks.
std::string bar_text(double ratio);

} // namespace rillwatt
