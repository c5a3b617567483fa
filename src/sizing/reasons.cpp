#include "reasons.hpp"

#include "rillwatt/quantity/figure_text.hpp"

#include <fmt/format.h>

#include "strong_supply.hpp"
#include <algorithm>

namespace rillwatt::sizing {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Puts one transformer's choice into words.
class Reasons {
  public:
    Reasons(const Site& site, const SizeProblem& problem, const TransformerProblem& transformer,
            const Proposal& proposal, Effort& effort)
        : site_(site), problem_(problem), transformer_(transformer),
          circuit_(problem.circuits->transformers[transformer.circuit]), proposal_(proposal),
          trial_(problem, transformer), effort_(effort) {}

    std::vector<SizeReason> give() {
        std::vector<SizeReason> reasons;
        for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
            const RunProblem& run = transformer_.runs[r];
            const std::string strong = strong_words(r);
            if (run.has_open())
                reasons.push_back(
                    {run_id(run.run), binding_lamp(run) + (strong.empty() ? "" : "; ") + strong, thinner(r)});
            else if (!strong.empty())
                reasons.push_back({run_id(run.run), strong, ""});
        }
        if (transformer_.model_open) reasons.push_back({id(), loading_words(), cheaper_model()});
        return reasons;
    }

  private:
    const std::string& id() const { return site_.transformers[circuit_.transformer].id; }
    const std::string& run_id(int run) const { return site_.runs[circuit_.runs[at(run)].run].id; }
    const std::string& part_id(int node) const { return node_id(site_, circuit_.nodes[at(node)]); }

    /// Where a strong supply was to count and does not for a run.
    std::string strong_words(std::size_t r) const {
        return problem_.options.strong_supply ? strong_tap_words(site_, problem_, transformer_, proposal_, r)
                                              : "";
    }

    /// A lamp's distance from one end of its window.
    struct Room {
        const RunNode* node = nullptr;
        double volts = 0;
        double end = 0;
        bool low = true;
        bool weak = false; ///< on a weak supply

        double left() const { return low ? volts - end : end - volts; }
    };

    /// The distances of a lamp from the ends of its window, in the cases that count.
    std::vector<Room> rooms_of(const RunNode& node) const {
        const double volts = trial_.solution().lamp_volts[at(node.node)];
        std::vector<Room> rooms{{&node, volts, node.lamp->low, true, false},
                                {&node, volts, node.lamp->high, false, false}};
        if (const NetworkSolution* weak = trial_.weak_solution())
            rooms.push_back({&node, weak->lamp_volts[at(node.node)], node.weak_lamp->low, true, true});
        return rooms;
    }

    /// The lamp of a run nearest to an end of its window.
    std::string binding_lamp(const RunProblem& run) {
        if (!trial_.judge(proposal_).feasible) return "";
        Room nearest;
        for (const RunNode& node : run.nodes) {
            if (!node.lamp) continue;
            for (const Room& room : rooms_of(node))
                if (nearest.node == nullptr || room.left() < nearest.left()) nearest = room;
        }
        if (nearest.node == nullptr) return "no lamp hangs on it";
        return fmt::format("{} binds: {}{}, {} is its {}", part_id(nearest.node->node),
                           volts_text(Volts(nearest.volts)), nearest.weak ? " on a weak supply" : "",
                           volts_text(Volts(nearest.end)), nearest.low ? "least" : "most");
    }

    std::string loading_words() {
        trial_.load(proposal_);
        if (!trial_.solve()) return "";
        double load = 0;
        for (std::size_t r = 0; r < transformer_.runs.size(); ++r)
            load += trial_.solution().run_volts[r] * trial_.solution().run_amps[r];
        const TransformerType& type = *transformer_.models[at(proposal_.model)].type;
        return fmt::format("loaded to {} of {}, the limit is {}", percent_text(load / type.va.value()),
                           va_text(type.va), percent_text(problem_.options.loading));
    }

    std::string breach_words(const Verdict& verdict) const {
        switch (verdict.breach) {
        case BreachKind::lamp_low:
            return fmt::format("would leave {} {} of {}{}", part_id(verdict.node),
                               volts_text(Volts(verdict.found)), volts_text(Volts(verdict.allowed)),
                               verdict.weak ? " on a weak supply" : "");
        case BreachKind::lamp_high:
            return fmt::format("would give {} {}, more than {}", part_id(verdict.node),
                               volts_text(Volts(verdict.found)), volts_text(Volts(verdict.allowed)));
        case BreachKind::cable:
            return fmt::format("would carry {} to {}, its ampacity is {}", amps_text(Amperes(verdict.found)),
                               part_id(verdict.node), amps_text(Amperes(verdict.allowed)));
        case BreachKind::secondary:
            return fmt::format("would load run {} with {} of {}", run_id(verdict.run),
                               amps_text(Amperes(verdict.found)), amps_text(Amperes(verdict.allowed)));
        case BreachKind::loading:
            return fmt::format("would be loaded to {} of {}", percent_text(verdict.found),
                               percent_text(verdict.allowed));
        case BreachKind::no_operating_point:
            return fmt::format("would not carry the lamps {}", verdict.weak ? "on a weak supply" : "at all");
        case BreachKind::contact_volts:
        case BreachKind::supply:
        case BreachKind::none:
            break;
        }
        return "would do as well, but whole spools make it no cheaper";
    }

    /// The best verdict over all taps of the given runs; every other tap stays.
    Verdict best_verdict(Proposal changed, std::size_t first, std::size_t last) {
        Verdict best = trial_.judge(changed);
        for (std::size_t r = first; r < last && !best.feasible && !effort_.spent(); ++r) {
            const double kept = changed.taps[r];
            for (const double tap : taps_for(transformer_.models[at(changed.model)], transformer_.runs[r])) {
                changed.taps[r] = tap;
                effort_.spend(trial_.steps());
                const Verdict other = trial_.judge(changed);
                if (other.feasible || shortfall(other) < shortfall(best)) best = other;
            }
            changed.taps[r] = kept;
        }
        return best;
    }

    static double shortfall(const Verdict& verdict) {
        if (verdict.breach == BreachKind::no_operating_point) return 1e300;
        return std::abs(verdict.found - verdict.allowed);
    }

    /// The next cheaper cable on a run: on all its open lengths, or with a cable for each length on those
    /// that have the run's first one.
    std::string thinner(std::size_t r) {
        const RunProblem& run = transformer_.runs[r];
        const auto first = std::find_if(run.nodes.begin(), run.nodes.end(),
                                        [](const RunNode& node) { return node.typed < 0; });
        const int chosen = proposal_.cables[r][static_cast<std::size_t>(first - run.nodes.begin())];
        int cheaper = -1;
        for (const int c : problem_.candidates)
            if (problem_.cables[at(c)].price < problem_.cables[at(chosen)].price &&
                (cheaper < 0 || problem_.cables[at(c)].price > problem_.cables[at(cheaper)].price))
                cheaper = c;
        if (cheaper < 0) return "";
        Proposal changed = proposal_;
        for (std::size_t i = 0; i < run.nodes.size(); ++i)
            if (run.nodes[i].typed < 0 && changed.cables[r][i] == chosen) changed.cables[r][i] = cheaper;
        return fmt::format("{} {}", problem_.cables[at(cheaper)].type->id,
                           breach_words(best_verdict(changed, r, r + 1)));
    }

    std::string cheaper_model() {
        const Model& chosen = transformer_.models[at(proposal_.model)];
        int cheaper = -1;
        for (std::size_t m = 0; m < transformer_.models.size(); ++m)
            if (transformer_.models[m].price < chosen.price) cheaper = static_cast<int>(m);
        if (cheaper < 0) return "";
        Proposal changed = proposal_;
        changed.model = cheaper;
        const Model& model = transformer_.models[at(cheaper)];
        for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
            const auto taps = taps_for(model, transformer_.runs[r]);
            if (taps.empty())
                return fmt::format("{} has no tap for run {}", model.type->id,
                                   run_id(transformer_.runs[r].run));
            if (std::find(taps.begin(), taps.end(), changed.taps[r]) == taps.end())
                changed.taps[r] = taps.back();
        }
        return fmt::format("{} {}", model.type->id,
                           breach_words(best_verdict(changed, 0, transformer_.runs.size())));
    }

    const Site& site_;
    const SizeProblem& problem_;
    const TransformerProblem& transformer_;
    const TransformerCircuit& circuit_;
    const Proposal& proposal_;
    Trial trial_;
    Effort& effort_;
};

} // namespace

std::vector<SizeReason> give_reasons(const Site& site, const SizeProblem& problem,
                                     const TransformerProblem& transformer, const Proposal& proposal,
                                     Effort& effort) {
    return Reasons(site, problem, transformer, proposal, effort).give();
}

} // namespace rillwatt::sizing
