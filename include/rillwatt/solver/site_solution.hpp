#pragma once

#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/quantity/quantity.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// One of the three conditions a site is computed under.
struct OperatingCase {
    std::string name;         ///< "nominal", "weak" or "strong"
    double supply_factor = 1; ///< of each transformer's supply volts
    Celsius conductor{75};
    bool loaded = true; ///< false: no load current at all, the highest volts a lamp can see
};

/// nominal, weak and strong for a site, in that order.
std::vector<OperatingCase> operating_cases(const SiteSettings& settings);

struct LampResult {
    std::size_t fixture = 0;     ///< index into Site::fixtures
    std::size_t run = 0;         ///< index into Site::runs
    std::size_t transformer = 0; ///< index into Site::transformers
    int node = -1;               ///< of TransformerCircuit::nodes
    Volts volts;                 ///< at the lamp, after the lead
    Volts splice_volts;          ///< where the lead joins the cable
    Amperes amps;
    VoltAmperes va;
    Watts watts;
    Volts drop;            ///< from the tap's open-circuit nominal volts to the lamp
    double drop_ratio = 0; ///< drop over the tap's nominal volts
};

/// A length of cable. Its names are those of the site and the catalog it was solved from, which must outlive
/// it.
struct SegmentResult {
    std::string_view from;
    std::string_view to;
    std::string_view link; ///< id of the link, empty for a length of the tree
    std::string_view cable;
    const CableType* type = nullptr; ///< the catalog's entry of that cable
    std::size_t transformer = 0;
    std::size_t run = 0;
    int node = -1;         ///< of TransformerCircuit::nodes that it leads to; -1: a link
    int circuit_link = -1; ///< of TransformerCircuit::links; -1: a length of the tree
    Metres length;
    Ohms ohms;    ///< both conductors at the case's temperature
    Amperes amps; ///< signed in a ring: positive from `from` to `to`
    Volts drop;
    Watts loss;
};

struct RunResult {
    std::size_t run = 0;
    std::size_t transformer = 0;
    Volts tap;
    Volts volts; ///< at the head of the run
    Amperes amps;
    std::optional<std::size_t> worst_fixture; ///< index into Site::fixtures; empty when no lamp hangs on it
    Volts worst_volts;
};

struct TransformerResult {
    std::size_t transformer = 0;
    VoltAmperes load;
    double loading = 0; ///< load over rating
    Amperes primary_amps;
    Watts winding_loss;
    Watts no_load;
};

/// A transformer whose circuit has no operating point: its constant-power lamps ask for more than the cable
/// carries.
struct NoOperatingPoint {
    std::size_t transformer = 0;
    std::size_t run = 0;     ///< gives way first
    std::size_t fixture = 0; ///< gives way first
    double carried_share =
        0; ///< greatest common factor on all loads of the transformer that has an operating point
};

/// What was found at one node of a circuit. The numbers are places in the lists of its case, -1 for none.
struct NodeResult {
    std::optional<Volts> volts; ///< on the cable, before any lead; empty where there is no answer
    int segment = -1;           ///< the length that leads here
    int lamp = -1;              ///< of a fixture
    int run = -1;               ///< of the start of a run
};

/// One transformer's circuit in one case, beside TransformerCircuit.
struct CircuitResult {
    std::vector<NodeResult> nodes; ///< beside TransformerCircuit::nodes
    int transformer = -1;          ///< place in CaseResult::transformers; -1: open, or no operating point
    int unsolved = -1;             ///< place in CaseResult::unsolved; -1: open, or solved
};

struct CaseResult {
    OperatingCase conditions;
    bool solved = true; ///< every transformer that is complete has an operating point
    std::vector<TransformerResult> transformers; ///< complete and solved ones, in file order
    std::vector<RunResult> runs;
    std::vector<LampResult> lamps;
    std::vector<SegmentResult> segments;
    std::vector<NoOperatingPoint> unsolved;
    std::vector<CircuitResult> circuits; ///< beside SiteCircuits::transformers
    Watts cable_loss;                    ///< cables and fixture leads
};

/// The low-voltage side in its three cases. `cases[0]` is nominal, `[1]` weak, `[2]` strong.
struct SiteSolution {
    std::vector<CaseResult> cases;

    const CaseResult& nominal() const { return cases.at(0); }
    const CaseResult& weak() const { return cases.at(1); }
    const CaseResult& strong() const { return cases.at(2); }
};

/// Solves every complete transformer in every case.
SiteSolution solve_site(const Site& site, const SiteCircuits& circuits);

} // namespace rillwatt
