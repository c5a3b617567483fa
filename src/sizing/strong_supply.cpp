#include "strong_supply.hpp"

#include "rillwatt/limits/limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace rillwatt::sizing {

namespace {

constexpr std::size_t trial_effort = 1'000'000; ///< to see whether a transformer can be served at all

const std::string& run_id(const Site& site, const SizeProblem& problem, const TransformerProblem& transformer,
                          const RunProblem& run) {
    const TransformerCircuit& circuit = problem.circuits->transformers[transformer.circuit];
    return site.runs[circuit.runs[static_cast<std::size_t>(run.run)].run].id;
}

double strong_factor(const Site& site) { return operating_cases(site.settings).back().supply_factor; }

/// The least of what a run may show, and the lamp whose window says so; none: the contact limit does.
struct Ceiling {
    Volts most{1e9};
    const CircuitNode* lamp = nullptr;
};

Ceiling ceiling_of(const SizeProblem& problem, const TransformerProblem& transformer, const RunProblem& run) {
    Ceiling ceiling{run.most_contact, nullptr};
    for (const RunNode& node : run.nodes) {
        if (!node.lamp) continue;
        const CircuitNode& place =
            problem.circuits->transformers[transformer.circuit].nodes[static_cast<std::size_t>(node.node)];
        const Volts most = place.fixture->window_high;
        if (most < ceiling.most) ceiling = {most, &place};
    }
    return ceiling;
}

bool is_served(const SizeProblem& problem, const TransformerProblem& transformer, Effort& effort) {
    TransformerSizing sizing(problem, transformer);
    Effort part = effort.part(trial_effort);
    while (!sizing.best() && !sizing.settled() && !part.spent())
        if (!sizing.improve(part)) break;
    effort.spend(part.used());
    return sizing.best().has_value();
}

/// The runs of one transformer whose limit stays lifted.
std::vector<const RunProblem*> lift(const SizeProblem& problem, TransformerProblem& transformer,
                                    Effort& effort) {
    std::vector<RunProblem*> limited;
    std::vector<std::optional<Volts>> limits;
    for (RunProblem& run : transformer.runs) {
        if (!run.most_unloaded) continue;
        limited.push_back(&run);
        limits.push_back(std::exchange(run.most_unloaded, std::nullopt));
    }
    const bool helps = !limited.empty() && is_served(problem, transformer, effort);
    std::vector<const RunProblem*> lifted;
    for (std::size_t k = 0; k < limited.size(); ++k) {
        if (helps) {
            limited[k]->most_unloaded = limits[k];
            if (is_served(problem, transformer, effort)) continue;
            limited[k]->most_unloaded.reset();
        }
        lifted.push_back(limited[k]);
    }
    return lifted;
}

} // namespace

void limit_to_strong_supply(const Site& site, SizeProblem& problem) {
    const double strong = strong_factor(site);
    for (TransformerProblem& transformer : problem.transformers)
        for (RunProblem& run : transformer.runs) {
            if (run.tap) continue;
            run.most_unloaded = ceiling_of(problem, transformer, run).most / strong;
        }
}

std::vector<std::string> lift_strong_limits(const Site& site, const SiteAnswer& answer, SizeProblem& problem,
                                            Effort& effort) {
    std::vector<std::string> ids;
    for (std::size_t t = 0; t < answer.proposals.size(); ++t) {
        if (answer.proposals[t]) continue;
        TransformerProblem& transformer = problem.transformers[t];
        for (const RunProblem* run : lift(problem, transformer, effort))
            ids.push_back(run_id(site, problem, transformer, *run));
    }
    return ids;
}

std::string strong_tap_words(const Site& site, const SizeProblem& problem,
                             const TransformerProblem& transformer, const Proposal& proposal,
                             std::size_t run) {
    const RunProblem& chosen = transformer.runs[run];
    const double strong = strong_factor(site);
    const Model& model = transformer.models[static_cast<std::size_t>(proposal.model)];
    const Volts tap(proposal.taps[run]);
    const Volts shown = tap * model.supply_ratio * strong;
    const Ceiling ceiling = ceiling_of(problem, transformer, chosen);
    if (chosen.tap || !at_most(shown, ceiling.most).broken()) return "";
    const std::string limit = ceiling.lamp == nullptr ? "the contact limit for its lights in water"
                                                      : "the most of " + node_id(site, *ceiling.lamp);
    return fmt::format("its tap of {} shows {} without load on a supply {} % high, above {}, {}: nothing was "
                       "found that keeps it and a weak supply too",
                       nominal_volts_text(tap), volts_text(shown), trimmed_text((strong - 1) * 100, 1), limit,
                       nominal_volts_text(ceiling.most));
}

} // namespace rillwatt::sizing
