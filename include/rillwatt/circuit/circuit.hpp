#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/layout/site_lengths.hpp"
#include "rillwatt/site/site.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

enum class NodeKind { run, splice, fixture };

/// One part of a transformer's tree: the start of a run, a splice or a fixture, with the cable that leads to
/// it.
struct CircuitNode {
    NodeKind kind = NodeKind::run;
    std::size_t part = 0;             ///< index into Site::runs, ::splices or ::fixtures
    int parent = -1;                  ///< node that feeds it; -1 for the start of a run
    int run = 0;                      ///< index into TransformerCircuit::runs
    const CableType* cable = nullptr; ///< of the length that leads here (a run: what it hands on); null: open
    bool own_cable = false;           ///< the part itself names that cable; otherwise it is inherited
    std::optional<Metres> length;     ///< empty: open, or the start of a run
    const FixtureType* fixture = nullptr;
    const CableType* lead_cable = nullptr;
    bool in_water = false; ///< a light that stands in water, as written or by the plan
};

/// A cable that closes a ring between two nodes of one transformer.
struct CircuitLink {
    std::size_t link = 0;             ///< index into Site::links
    int a = 0;                        ///< node
    int b = 0;                        ///< node
    const CableType* cable = nullptr; ///< null: open
    std::optional<Metres> length;     ///< empty: open
};

/// A cable leaving a transformer.
struct CircuitRun {
    std::size_t run = 0;      ///< index into Site::runs
    int node = 0;             ///< its start among the nodes
    std::optional<Volts> tap; ///< empty: open
};

/// Everything that hangs on one transformer, parents before children.
struct TransformerCircuit {
    std::size_t transformer = 0;           ///< index into Site::transformers
    const TransformerType* type = nullptr; ///< null: open
    Volts supply;                          ///< its circuit's volts, else the site's
    std::vector<CircuitRun> runs;
    std::vector<CircuitNode> nodes;
    std::vector<CircuitLink> links;

    /// Whether nothing is open: such a circuit can be solved.
    bool complete() const;
};

/// A value of the low-voltage side that the user left out.
struct OpenValue {
    std::string part;
    SourceLocation location;
    std::string what;        ///< "cable", "tap", "model", "length" or "from"
    std::string filled_by;   ///< what fills it: "rillwatt size", "`at` on both ends, or a typed length", ...
    std::string transformer; ///< the transformer left out of the numbers; empty when none is
};

/// The low-voltage side of a site: one circuit for each transformer, and what is open in them.
struct SiteCircuits {
    std::vector<TransformerCircuit> transformers;  ///< in the order of Site::transformers
    std::vector<const FixtureType*> fixture_types; ///< in the order of Site::fixtures
    std::vector<OpenValue> open;                   ///< in file order
};

/// Builds the trees from what each part says feeds it. Parts that feed each other, a feed of the wrong kind
/// and a tap the transformer does not have are input errors that name the parts and their lines, and the key
/// whose value is meant: `locate_values` finds that value's own line.
LoadResult<SiteCircuits> build_circuits(const Site& site, const Catalog& catalog, const SiteLengths& lengths);

/// What `build_circuits` says of how parts hang together, and nothing of names, which are looked up when a
/// site is read: for a site whose other errors keep it from being built.
std::vector<InputError> wiring_errors(const Site& site, const Catalog& catalog);

/// Id of the site part a node stands for.
const std::string& node_id(const Site& site, const CircuitNode& node);

} // namespace rillwatt
