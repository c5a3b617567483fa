#include "open_values.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

constexpr const char* by_sizing = "rillwatt size";
constexpr const char* by_plan = "`at` on both ends, or a typed length";
constexpr const char* by_placing = "`from`: the run, splice or fixture that feeds it";

const Part& site_part(const Site& site, const CircuitNode& node) {
    switch (node.kind) {
    case NodeKind::run:
        return site.runs[node.part];
    case NodeKind::splice:
        return site.splices[node.part];
    case NodeKind::fixture:
        break;
    }
    return site.fixtures[node.part];
}

/// Collects what is open in one circuit.
class OpenValueList {
  public:
    OpenValueList(const Site& site, std::vector<OpenValue>& open) : site_(site), open_(open) {}

    void add_circuit(const TransformerCircuit& circuit) {
        const Transformer& transformer = site_.transformers[circuit.transformer];
        transformer_ = transformer.id;
        if (!circuit.type) add(transformer, "model", by_sizing);
        for (const CircuitRun& run : circuit.runs)
            if (!run.tap) add(site_.runs[run.run], "tap", by_sizing);
        add_nodes(circuit);
        for (const CircuitLink& link : circuit.links) {
            if (!link.cable) add(site_.links[link.link], "cable", by_sizing);
            if (!link.length) add(site_.links[link.link], "length", by_plan);
        }
    }

  private:
    /// An inherited cable is open at the run, once, and only where a part has need of it.
    void add_nodes(const TransformerCircuit& circuit) {
        std::vector<bool> reported(circuit.runs.size());
        for (const CircuitNode& node : circuit.nodes) {
            if (node.kind == NodeKind::run) continue;
            if (!node.length) add(site_part(site_, node), "length", by_plan);
            const auto run = static_cast<std::size_t>(node.run);
            if (node.cable || reported[run]) continue;
            reported[run] = true;
            add(site_.runs[circuit.runs[run].run], "cable", by_sizing);
        }
    }

    void add(const Part& part, const char* what, const char* filled_by) {
        open_.push_back({part.id, part.location, what, filled_by, transformer_});
    }

    const Site& site_;
    std::vector<OpenValue>& open_;
    std::string transformer_;
};

} // namespace

std::vector<OpenValue> open_values(const Site& site, const std::vector<TransformerCircuit>& circuits) {
    std::vector<OpenValue> open;
    OpenValueList list(site, open);
    for (const TransformerCircuit& circuit : circuits)
        list.add_circuit(circuit);
    for (const Fixture& fixture : site.fixtures)
        if (!fixture.from) open.push_back({fixture.id, fixture.location, "from", by_placing, {}});
    std::stable_sort(open.begin(), open.end(), [](const OpenValue& a, const OpenValue& b) {
        return a.location.line < b.location.line;
    });
    return open;
}

} // namespace rillwatt
