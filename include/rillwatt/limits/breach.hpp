#pragma once

#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/finding/finding.hpp"
#include "rillwatt/limits/standing.hpp"
#include "rillwatt/solver/network.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace rillwatt {

/// What may break in a circuit.
enum class BreachKind {
    none,
    no_operating_point, ///< value: the share of the load that would work; limit: 1
    lamp_low,           ///< volts at a lamp
    lamp_high,          ///< volts at a lamp
    cable,              ///< amperes through a length or a link
    secondary,          ///< amperes from one output of the transformer
    loading,            ///< load of the transformer over its rating
    contact_volts,      ///< volts without load at a light in water; of the run in the strong case
    supply,             ///< volts of the circuit on which the transformer hangs; limit: its primary volts
};

/// One limit that is broken, and where. A search asks for the worst one, rules word all of them.
struct Breach {
    BreachKind kind = BreachKind::none;
    std::size_t operating_case = 0; ///< index into SiteSolution::cases
    std::size_t transformer = 0;    ///< index into SiteCircuits::transformers
    int run = -1;                   ///< of the circuit
    int node = -1;                  ///< of the circuit: the lamp, or the part to which the length leads
    int link = -1;                  ///< of the circuit, where it is one
    double value = 0;               ///< volts, amperes or ratio found there
    double limit = 0;               ///< what it may be at most, or at least for `lamp_low`
};

/// Id of the rule that speaks of a breach.
std::string_view rule_of(const Breach& breach);

/// How bad it is. An error in the nominal case but for a transformer that is loaded beyond its margin and
/// within its rating; a warning in the weak and the strong case but for contact volts, which are a note
/// there.
Severity severity_of(const Breach& breach);

/// The part of the site that a breach is about.
const Part& part_of(const Site& site, const TransformerCircuit& circuit, const Breach& breach);

/// Every limit that a solved site breaks. Volts at lamps and in water are judged in every case, currents,
/// loadings and supplies in the nominal one alone: in the weak case currents differ by no more than the
/// supply's band.
std::vector<Breach> find_breaches(const Site& site, const SiteCircuits& circuits,
                                  const SiteSolution& solution);

/// The worst breach of one solved circuit in one case: of the first kind that is broken (lamps, cables, runs,
/// transformer) the one farthest beyond its limit. Empty where all limits and margins are kept. The circuit
/// is complete and `solution` is that of its network.
std::optional<Breach> worst_breach(const TransformerCircuit& circuit, const NetworkSolution& solution,
                                   const Margins& margins);

/// Whether cables, outputs and transformer of a solved circuit carry their currents, whatever the lamps get.
bool carries_load(const TransformerCircuit& circuit, const NetworkSolution& solution, const Margins& margins);

} // namespace rillwatt
