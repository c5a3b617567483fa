#include "rillwatt/sizing/headroom.hpp"

#include "rillwatt/check/limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/search/trial.hpp"
#include "rillwatt/solver/network.hpp"

#include <fmt/format.h>

#include "gather_problem.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

using sizing::Breach;
using sizing::Verdict;

constexpr double resolution_va = 0.05;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// The choice a complete circuit stands for.
sizing::Proposal as_it_stands(const sizing::TransformerProblem& transformer) {
    sizing::Proposal proposal;
    for (const sizing::RunProblem& run : transformer.runs) {
        proposal.taps.push_back(*run.tap);
        proposal.cables.emplace_back();
        for (const sizing::RunNode& node : run.nodes)
            proposal.cables.back().push_back(node.typed);
    }
    proposal.link_cables = transformer.link_typed;
    return proposal;
}

const char* rule_of(const Verdict& verdict) {
    switch (verdict.breach) {
    case Breach::lamp_low:
        return "lamp-undervoltage";
    case Breach::lamp_high:
        return "lamp-overvoltage";
    case Breach::cable:
        return "cable-overloaded";
    case Breach::secondary:
        return "secondary-overloaded";
    case Breach::loading:
        // beyond the rating the one speaks, from the margin up to the rating the other
        return above(verdict.found, limits::transformer_rating.value) ? "transformer-overloaded"
                                                                      : "transformer-margin";
    case Breach::no_operating_point:
        return "no-operating-point";
    case Breach::none:
        break;
    }
    return "";
}

/// A circuit with one more light at each of some nodes, at the near end of whatever hangs there.
TransformerCircuit with_lights(const TransformerCircuit& circuit, const std::vector<int>& nodes,
                               const FixtureType& light, const CableType& joint) {
    TransformerCircuit more = circuit;
    for (const int index : nodes) {
        CircuitNode node = circuit.nodes[at(index)];
        node.kind = NodeKind::splice; // not one of the site's parts: only its number is looked at
        node.part = 0;
        node.parent = index;
        node.length = Metres(0);
        node.fixture = &light;
        node.lead_cable = nullptr;
        node.cable = &joint;
        more.nodes.push_back(node);
    }
    return more;
}

/// Least window of the lamps of one run; of any lamp where the run has none.
Volts least_window(const TransformerCircuit& circuit, int run) {
    std::optional<Volts> here;
    std::optional<Volts> anywhere;
    for (const CircuitNode& node : circuit.nodes) {
        if (node.fixture == nullptr) continue;
        const Volts low = node.fixture->window_low;
        anywhere = anywhere ? std::min(*anywhere, low) : low;
        if (node.run == run) here = here ? std::min(*here, low) : low;
    }
    return here ? *here : anywhere.value_or(Volts(0));
}

/// Looks for what breaks when load is added at some nodes of one transformer.
class Probe {
  public:
    Probe(const Assessment& assessment, const SizeOptions& options, std::size_t index,
          const std::vector<int>& nodes)
        : site_(*assessment.site), original_(assessment.circuits.transformers[index]), nodes_(nodes) {
        light_.window_low = least_window(original_, original_.nodes[at(nodes.front())].run);
        light_.window_high = Volts(1000);
        light_.va = VoltAmperes(1);
        joint_.ampacity = Amperes(1e9); // no cable at all: the light hangs right there
        circuits_.transformers.push_back(with_lights(original_, nodes, light_, joint_));
        problem_ = sizing::gather(site_, *assessment.catalog, circuits_, options);
        trial_.emplace(problem_, problem_.transformers.front());
        proposal_ = as_it_stands(problem_.transformers.front());
        trial_->load(proposal_);
    }

    Headroom find(const std::string& part) {
        Headroom room;
        room.part = part;
        room.transformer = site_.transformers[original_.transformer].id;
        Verdict verdict = with(0);
        room.broken = !verdict.feasible;
        if (room.broken) return describe(room, verdict);
        verdict = with(most_headroom.value());
        room.limited = !verdict.feasible;
        room.more = most_headroom;
        if (!room.limited) return room;
        double fits = 0;
        double breaks = most_headroom.value();
        while (breaks - fits > resolution_va) {
            const double middle = (fits + breaks) / 2;
            const Verdict found = with(middle);
            (found.feasible ? fits : breaks) = middle;
            if (!found.feasible) verdict = found;
        }
        room.more = VoltAmperes(fits);
        return describe(room, verdict);
    }

  private:
    Verdict with(double va) {
        Network& network = trial_->network();
        for (std::size_t k = 0; k < nodes_.size(); ++k)
            network.power[original_.nodes.size() + k] = va / static_cast<double>(nodes_.size());
        if (!trial_->solve()) return {false, Breach::no_operating_point, -1, -1, 0, 0};
        return trial_->inspect(proposal_);
    }

    std::string part_words(const Verdict& verdict) const {
        if (verdict.node >= static_cast<int>(original_.nodes.size())) return "the added light";
        if (verdict.node >= 0) return node_id(site_, original_.nodes[at(verdict.node)]);
        if (verdict.run >= 0) return site_.runs[original_.runs[at(verdict.run)].run].id;
        return site_.transformers[original_.transformer].id;
    }

    Headroom describe(Headroom room, const Verdict& verdict) const {
        room.rule = rule_of(verdict);
        room.breaks = part_words(verdict);
        const Volts volts(verdict.allowed);
        const Amperes amps(verdict.allowed);
        switch (verdict.breach) {
        case Breach::lamp_low:
            room.what = fmt::format("{} falls to {}", room.breaks, volts_text(volts));
            break;
        case Breach::lamp_high:
            room.what = fmt::format("{} rises to {}", room.breaks, volts_text(volts));
            break;
        case Breach::cable:
            room.what = fmt::format("the cable to {} reaches {}", room.breaks, nominal_amps_text(amps));
            break;
        case Breach::secondary:
            room.what = fmt::format("run {} reaches {}", room.breaks, nominal_amps_text(amps));
            break;
        case Breach::loading:
            room.what = fmt::format("{} reaches {}", room.breaks, percent_text(verdict.allowed));
            break;
        case Breach::no_operating_point:
            room.what = "more than the cable can carry";
            break;
        case Breach::none:
            break;
        }
        return room;
    }

    const Site& site_;
    const TransformerCircuit& original_;
    const std::vector<int>& nodes_;
    FixtureType light_;
    CableType joint_;
    SiteCircuits circuits_;
    sizing::SizeProblem problem_;
    std::optional<sizing::Trial> trial_;
    sizing::Proposal proposal_;
};

} // namespace

std::vector<Headroom> find_headroom(const Assessment& assessment, const SizeOptions& options) {
    std::vector<Headroom> rooms;
    for (std::size_t t = 0; t < assessment.circuits.transformers.size(); ++t) {
        const TransformerCircuit& circuit = assessment.circuits.transformers[t];
        if (!circuit.complete() || circuit.runs.empty()) continue;
        std::vector<int> heads;
        for (const CircuitRun& run : circuit.runs)
            heads.push_back(run.node);
        const std::string& id = assessment.site->transformers[circuit.transformer].id;
        rooms.push_back(Probe(assessment, options, t, heads).find(id));
        for (std::size_t i = 0; i < circuit.nodes.size(); ++i) {
            const std::vector<int> place{static_cast<int>(i)};
            rooms.push_back(
                Probe(assessment, options, t, place).find(node_id(*assessment.site, circuit.nodes[i])));
        }
    }
    return rooms;
}

} // namespace rillwatt
