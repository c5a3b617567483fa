#include "choices.hpp"

#include "rillwatt/quantity/quantity_text.hpp"

#include <algorithm>

namespace rillwatt::sizing {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

constexpr int tap_decimals = 6;

std::optional<std::string>& cable_of(Site& site, const CircuitNode& node) {
    if (node.kind == NodeKind::run) return site.runs[node.part].cable;
    if (node.kind == NodeKind::splice) return site.splices[node.part].cable;
    return site.fixtures[node.part].cable;
}

/// Writes one transformer's proposal into the site.
class Writer {
  public:
    Writer(const SizeProblem& problem, const TransformerProblem& transformer, Site& site,
           std::vector<SizeChoice>& choices)
        : problem_(problem), transformer_(transformer),
          circuit_(problem.circuits->transformers[transformer.circuit]), site_(site), choices_(choices) {}

    void write(const Proposal& proposal) {
        write_model(proposal);
        for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
            write_tap(transformer_.runs[r], proposal.taps[r]);
            write_cables(transformer_.runs[r], proposal.cables[r]);
        }
        for (std::size_t k = 0; k < proposal.link_cables.size(); ++k)
            if (transformer_.link_typed[k] < 0) {
                Link& link = site_.links[circuit_.links[k].link];
                set(link.id, link.cable, problem_.cables[at(proposal.link_cables[k])].type->id);
            }
    }

  private:
    void set(const std::string& part, std::optional<std::string>& place, const std::string& value,
             const char* what = "cable") {
        if (place == value) return;
        choices_.push_back({part, what, value, place, {}, {}});
        place = value;
    }

    void write_model(const Proposal& proposal) {
        Transformer& transformer = site_.transformers[circuit_.transformer];
        if (transformer_.model_open)
            set(transformer.id, transformer.model, transformer_.models[at(proposal.model)].type->id, "model");
    }

    void write_tap(const RunProblem& problem, double tap) {
        Run& run = site_.runs[circuit_.runs[at(problem.run)].run];
        if (problem.tap || run.tap == Volts(tap)) return;
        std::optional<std::string> was;
        if (run.tap) was = trimmed_text(run.tap->value(), tap_decimals);
        choices_.push_back({run.id, "tap", trimmed_text(tap, tap_decimals), was, Volts(tap), run.tap});
        run.tap = Volts(tap);
    }

    /// The run names the cable of its first open length; a part names one where it differs from what feeds
    /// it, or where it named one before.
    void write_cables(const RunProblem& run, const std::vector<int>& cables) {
        const auto first = std::find_if(run.nodes.begin(), run.nodes.end(),
                                        [](const RunNode& node) { return node.typed < 0; });
        if (first == run.nodes.end()) return;
        const int handed_on = cables[at(static_cast<int>(first - run.nodes.begin()))];
        Run& part = site_.runs[circuit_.runs[at(run.run)].run];
        set(part.id, part.cable, problem_.cables[at(handed_on)].type->id);
        for (std::size_t i = 0; i < run.nodes.size(); ++i) {
            const RunNode& node = run.nodes[i];
            if (node.typed >= 0) continue;
            const int inherited = node.parent < 0 ? handed_on : cables[at(node.parent)];
            const CircuitNode& place = circuit_.nodes[at(node.node)];
            std::optional<std::string>& own = cable_of(site_, place);
            if (cables[i] == inherited && !own) continue;
            set(node_id(site_, place), own, problem_.cables[at(cables[i])].type->id);
        }
    }

    const SizeProblem& problem_;
    const TransformerProblem& transformer_;
    const TransformerCircuit& circuit_;
    Site& site_;
    std::vector<SizeChoice>& choices_;
};

} // namespace

Site reopened(const Site& site) {
    Site open = site;
    for (Transformer& transformer : open.transformers)
        transformer.model.reset();
    for (Run& run : open.runs) {
        run.tap.reset();
        run.cable.reset();
    }
    for (Splice& splice : open.splices)
        splice.cable.reset();
    for (Fixture& fixture : open.fixtures)
        fixture.cable.reset();
    for (Link& link : open.links)
        link.cable.reset();
    return open;
}

std::vector<SizeChoice> put_in_place(const SizeProblem& problem,
                                     const std::vector<std::optional<Proposal>>& proposals, Site& site) {
    std::vector<SizeChoice> choices;
    for (std::size_t t = 0; t < proposals.size(); ++t)
        if (proposals[t]) Writer(problem, problem.transformers[t], site, choices).write(*proposals[t]);
    return choices;
}

} // namespace rillwatt::sizing
