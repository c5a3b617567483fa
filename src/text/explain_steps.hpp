#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/plan/solved_circuit.hpp"
#include "rillwatt/text/text_style.hpp"

#include <string>

namespace rillwatt {

/// One circuit to be explained, in one case.
struct Explained {
    const Assessment& assessment;
    const CaseResult& result;
    const SolvedCircuit& solved;
    const TextStyle& style;

    const Site& site() const { return *assessment.site; }
    const TransformerCircuit& circuit() const { return *solved.circuit; }
    const CircuitNode& written(int node) const { return circuit().nodes[static_cast<std::size_t>(node)]; }
    const SolvedNode& answer(int node) const { return solved.nodes[static_cast<std::size_t>(node)]; }
    std::string name(int node) const; ///< printable id
};

// Steps of the arithmetic, each a few lines that end in a newline. All need an answer for the circuit.

/// Supply, tap and regulation up to the volts at the head of a run.
std::string head_of_run_steps(const Explained& about, int run);

/// Every cable length from the head of the run to a node.
std::string cable_steps(const Explained& about, int node);

/// A lamp's lead and the current its load model asks for at its volts.
std::string lamp_steps(const Explained& about, int node);

/// Load, loading and primary current of the transformer.
std::string transformer_steps(const Explained& about);

/// What was left out and what was simplified.
std::string method_remarks(const TextStyle& style);

} // namespace rillwatt
