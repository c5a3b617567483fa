#include "rillwatt/limits/breach.hpp"
#include "rillwatt/limits/supply_limits.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

/// Collects the breaches of one site.
class Search {
  public:
    Search(const Site& site, const SiteCircuits& circuits, const SiteSolution& solution)
        : site_(site), circuits_(circuits), solution_(solution) {}

    std::vector<Breach> all() {
        for (case_ = 0; case_ < solution_.cases.size(); ++case_)
            judge_case(solution_.cases[case_]);
        case_ = 0;
        for (std::size_t i = 0; i < circuits_.transformers.size(); ++i)
            judge_supply(i);
        return std::move(breaches_);
    }

  private:
    void judge_case(const CaseResult& result) {
        for (const NoOperatingPoint& stop : result.unsolved)
            add_unsolved(stop);
        for (const LampResult& lamp : result.lamps)
            judge_lamp(lamp);
        if (case_ > 0) return; // currents and loadings are judged in the nominal case
        for (const SegmentResult& segment : result.segments)
            hold(against_ampacity(*segment.type, segment.amps), {.kind = BreachKind::cable,
                                                                 .transformer = segment.transformer,
                                                                 .node = segment.node,
                                                                 .link = segment.circuit_link});
        for (const RunResult& run : result.runs)
            judge_run(run);
        for (const TransformerResult& transformer : result.transformers)
            hold(against_loading(transformer.loading),
                 {.kind = BreachKind::loading, .transformer = transformer.transformer});
    }

    void judge_lamp(const LampResult& lamp) {
        const FixtureType& type = *circuits_.fixture_types[lamp.fixture];
        const Breach place{.transformer = lamp.transformer, .node = lamp.node};
        hold(against_low_end(type, lamp.volts), with(place, BreachKind::lamp_low));
        hold(against_high_end(type, lamp.volts), with(place, BreachKind::lamp_high));
    }

    void judge_run(const RunResult& run) {
        const TransformerCircuit& circuit = circuits_.transformers[run.transformer];
        const Standing output = against_output(*circuit.type, run.amps);
        if (!output.broken()) return;
        hold(output, {.kind = BreachKind::secondary,
                      .transformer = run.transformer,
                      .run = run_index(circuit, run.run)});
    }

    void add_unsolved(const NoOperatingPoint& stop) {
        const TransformerCircuit& circuit = circuits_.transformers[stop.transformer];
        const auto lamp = std::find_if(circuit.nodes.begin(), circuit.nodes.end(), [&](const CircuitNode& n) {
            return n.kind == NodeKind::fixture && n.part == stop.fixture;
        });
        breaches_.push_back({.kind = BreachKind::no_operating_point,
                             .operating_case = case_,
                             .transformer = stop.transformer,
                             .run = run_index(circuit, stop.run),
                             .node = static_cast<int>(lamp - circuit.nodes.begin()),
                             .value = stop.carried_share,
                             .limit = 1});
    }

    /// The supply of a transformer, and what its taps show in water.
    void judge_supply(std::size_t index) {
        const TransformerCircuit& circuit = circuits_.transformers[index];
        if (circuit.type != nullptr && !supply_fits(circuit.supply, circuit.type->primary_volts))
            breaches_.push_back({.kind = BreachKind::supply,
                                 .transformer = index,
                                 .value = circuit.supply.value(),
                                 .limit = circuit.type->primary_volts.value()});
        for (std::size_t r = 0; r < circuit.runs.size(); ++r)
            if (circuit.runs[r].tap) judge_contact(circuit, static_cast<int>(r), *circuit.runs[r].tap);
    }

    void judge_contact(const TransformerCircuit& circuit, int run, Volts tap) {
        const Volts shown = contact_volts(circuit, tap);
        const std::size_t strong_case = solution_.cases.size() - 1;
        const Standing nominal = against_contact_limit(site_.settings, shown);
        const Standing strong = against_contact_limit(
            site_.settings, shown * solution_.cases[strong_case].conditions.supply_factor);
        if (!nominal.broken() && !strong.broken()) return;
        Breach breach{.kind = BreachKind::contact_volts, .transformer = circuit.transformer, .run = run};
        bool wet = false;
        for (std::size_t i = 0; i < circuit.nodes.size(); ++i) {
            const CircuitNode& node = circuit.nodes[i];
            if (node.run != run || !node.in_water) continue;
            wet = true;
            breach.node = static_cast<int>(i);
            hold(nominal, breach);
        }
        if (!wet || nominal.broken()) return;
        breach.node = -1;
        breach.operating_case = strong_case;
        add(strong, breach);
    }

    static Breach with(Breach breach, BreachKind kind) {
        breach.kind = kind;
        return breach;
    }

    static int run_index(const TransformerCircuit& circuit, std::size_t run) {
        const auto found = std::find_if(circuit.runs.begin(), circuit.runs.end(),
                                        [run](const CircuitRun& candidate) { return candidate.run == run; });
        return static_cast<int>(found - circuit.runs.begin());
    }

    void hold(const Standing& standing, Breach breach) {
        if (!standing.broken()) return;
        breach.operating_case = case_;
        add(standing, breach);
    }

    void add(const Standing& standing, Breach breach) {
        const TransformerCircuit& circuit = circuits_.transformers[breach.transformer];
        if (breach.run < 0 && breach.node >= 0)
            breach.run = circuit.nodes[static_cast<std::size_t>(breach.node)].run;
        breach.value = standing.value;
        breach.limit = standing.limit;
        breaches_.push_back(breach);
    }

    const Site& site_;
    const SiteCircuits& circuits_;
    const SiteSolution& solution_;
    std::size_t case_ = 0;
    std::vector<Breach> breaches_;
};

} // namespace

std::vector<Breach> find_breaches(const Site& site, const SiteCircuits& circuits,
                                  const SiteSolution& solution) {
    return Search(site, circuits, solution).all();
}

} // namespace rillwatt
