#pragma once

#include "rillwatt/mains/burial.hpp"
#include "rillwatt/mains/mains_summary.hpp"

#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

/// A value of a proposed circuit: as written, or chosen for what was left open.
template<class Value>
struct Proposed {
    std::optional<Value> value; ///< empty: open, and nothing fits
    bool chosen = false;        ///< false: the user wrote it
};

/// How far one copper size carries a circuit's load within the drop limit.
struct LongestRun {
    std::string conductor;
    Metres length; ///< panel to outlet, one way
};

/// One branch circuit as it could be asked for.
struct ProposedCircuit {
    std::string id;
    std::optional<std::size_t> circuit; ///< index into Site::circuits; empty: it does not exist yet
    BranchCircuit written;              ///< the circuit with every choice in place
    MainsCircuit figures;               ///< its load, and its drop where the length is known
    Proposed<Amperes> breaker;
    Proposed<std::string> conductor;
    Proposed<Wiring> wiring;
    Proposed<Metres> cover;
    bool gfci_chosen = false;        ///< GFCI protection was not written
    std::string grounding;           ///< copper equipment grounding conductor; empty: not in the table
    std::vector<LongestRun> longest; ///< from the chosen conductor up
    std::vector<std::string> why;    ///< one sentence for each choice
    std::vector<std::string> cannot; ///< what no choice can fix
};

/// Minimum cover under one crossing for each wiring method, direct burial also as a home's GFCI circuit.
struct BurialChoice {
    Crossing crossing = Crossing::lawn;
    CoverNeeded direct;
    CoverNeeded rigid_metal;
    CoverNeeded pvc;
    Wiring proposed = Wiring::direct_burial;
    std::string why;
};

/// What to ask the electrician for: what is written stays, what is open is filled.
struct CircuitProposal {
    std::vector<ProposedCircuit> circuits; ///< written ones in file order, then new ones
    std::vector<BurialChoice> burial;      ///< lawn, slab, driveway; empty where code = "iec"
    std::vector<std::string> advice;       ///< about what is written and would be better otherwise
    bool loads_known = true;               ///< false: a load has no model, its circuit is sized without it
};

/// Proposes circuits: loads that name none get new ones, pumps apart from lights, as few as load and leakage
/// allow; open breakers are the smallest standard rating for the design current, open conductors the thinnest
/// copper for breaker, load and drop limit; open wiring and depths by the burial table. The tables are those
/// of the US code: where code = "iec" loads are still spread over circuits, but sizes and depths stay open.
CircuitProposal propose_circuits(const Site& site, const MainsSummary& summary);

/// The choices as site-file text: whole `[[circuit]]` tables for new circuits, and the lines to add to
/// written ones and to their loads, as comments that name the part.
std::string proposal_toml(const CircuitProposal& proposal);

/// The wiring method proposed for a crossing, and why.
BurialChoice burial_choice(Crossing crossing, bool dwelling);

} // namespace rillwatt
