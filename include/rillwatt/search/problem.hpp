#pragma once

#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/search/packing.hpp"
#include "rillwatt/search/size_options.hpp"
#include "rillwatt/search/windowed_lamp.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <array>
#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <vector>

/// What there is to choose on a site, as plain numbers.
namespace rillwatt::search {

/// The loaded cases that a choice has to hold in. The strong case has no load: it limits taps alone.
enum class Supplied { nominal, weak };

/// One value for each of these cases.
template<class T>
struct PerCase {
    std::array<T, 2> values{};

    T& operator[](Supplied supplied) { return values[static_cast<std::size_t>(supplied)]; }
    const T& operator[](Supplied supplied) const { return values[static_cast<std::size_t>(supplied)]; }
};

/// A cable that may be chosen or is typed somewhere.
struct Cable {
    const CableType* type = nullptr;
    double ohms_per_metre = 0;      ///< out and back, at the nominal case's temperature
    double weak_ohms_per_metre = 0; ///< at the weak case's
    double price = 0;               ///< per metre; 0 when the catalog gives none
    double ampacity = 0;
    int thickness = 0; ///< rank of its section among the candidates, thinnest first
    int spool = -1;    ///< index into SizeProblem::spools; -1: sold by length
    double longest = std::numeric_limits<double>::infinity(); ///< metres: its longest spool

    /// Whether a piece can be cut of it: pieces are never joined.
    bool holds(double metres) const { return spool < 0 || whole_length(metres) <= whole_length(longest); }

    double ohms_in(Supplied supplied) const {
        return supplied == Supplied::weak ? weak_ohms_per_metre : ohms_per_metre;
    }
};

/// A cable sold in spools, and what of it is laid whatever is chosen.
struct SpoolCable {
    const CableType* type = nullptr;
    std::vector<Length> sold;  ///< ascending
    double price = 0;          ///< per metre; 0 when the catalog gives none
    std::vector<Length> typed; ///< pieces; those that no spool holds are in SizeProblem::typed_cost
};

/// One length of cable with the point at its far end.
struct RunNode {
    int node = 0;    ///< of the circuit
    int parent = -1; ///< index into RunProblem::nodes; -1: the head of the run
    double metres = 0;
    int typed = -1; ///< index into SizeProblem::cables; -1: open
    std::optional<WindowedLamp> lamp;
    std::optional<WindowedLamp> weak_lamp; ///< the same with its lead and least volts in the weak case

    const std::optional<WindowedLamp>& lamp_in(Supplied supplied) const {
        return supplied == Supplied::weak ? weak_lamp : lamp;
    }
};

/// One run of a transformer. Nodes come after the node that feeds them.
struct RunProblem {
    int run = 0; ///< index into TransformerCircuit::runs
    std::optional<double> tap;
    Volts most_contact{
        1e9}; ///< what its tap may show without load; the contact limit where water asks for it
    /// Where a strong supply counts: the most a tap that may be chosen gives at the site's own supply without
    /// load, so that a strong one still keeps the high end of every window and the contact limit.
    std::optional<Volts> most_unloaded;
    std::vector<RunNode> nodes;

    double open_metres() const;
    double longest_open() const; ///< metres of the longest open length
    bool has_open() const;
};

/// A transformer that may be chosen or is typed.
struct Model {
    const TransformerType* type = nullptr;
    double supply_ratio = 1;
    double weak_ratio = 1; ///< the same on a weak supply
    double price = 0;

    double ratio_in(Supplied supplied) const {
        return supplied == Supplied::weak ? weak_ratio : supply_ratio;
    }
};

struct TransformerProblem {
    std::size_t circuit = 0;   ///< index into SiteCircuits::transformers
    std::vector<Model> models; ///< by ascending price; one when it is typed
    bool model_open = false;
    bool needs_water_listing = false; ///< of an open model
    std::vector<RunProblem> runs;
    bool meshed = false;
    std::vector<int> link_typed; ///< for each link its cable, -1: open
};

struct SizeProblem {
    const SiteCircuits* circuits = nullptr;
    SizeOptions options;
    std::vector<Cable> cables;   ///< candidates first
    std::vector<int> candidates; ///< indices into `cables`, thinnest first
    std::vector<SpoolCable> spools;
    std::vector<TransformerProblem> transformers; ///< those without an open length
    double typed_cost = 0; ///< cable typed and bought by length; typed transformers that are left out
    std::vector<std::string> unpriced; ///< typed entries counted at nothing, by id
    std::vector<std::string> left_out; ///< transformers that cannot be sized, by id
    OperatingCase nominal;
    std::optional<OperatingCase> weak; ///< where it counts
};

/// Taps of a model that a run may use: the typed one, or all that suit it.
std::vector<double> taps_for(const Model& model, const RunProblem& run);

} // namespace rillwatt::search
