#include "infeasible.hpp"

#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "remedies.hpp"
#include <algorithm>

namespace rillwatt::sizing {

namespace {

constexpr std::size_t most_tap_choices = 400;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// An open length that no cable holds in one piece, with what is nearest to holding it.
struct LongPiece {
    std::string part; ///< the part it leads to, or the link
    std::string run;  ///< empty for a link
    Metres length;
    Metres longest_spool;
};

/// The longest open length that is longer than every spool it could be cut from; empty when there is none.
std::optional<LongPiece> longest_unheld(const Site& site, const SizeProblem& problem,
                                        const TransformerProblem& transformer) {
    double longest = 0;
    for (const int c : problem.candidates)
        longest = std::max(longest, problem.cables[at(c)].longest);
    const TransformerCircuit& circuit = problem.circuits->transformers[transformer.circuit];
    std::optional<LongPiece> found;
    const auto consider = [&](const std::string& part, const std::string& run, double metres) {
        const bool held = std::any_of(problem.candidates.begin(), problem.candidates.end(),
                                      [&](int c) { return problem.cables[at(c)].holds(metres); });
        if (!held && (!found || Metres(metres) > found->length))
            found = LongPiece{part, run, Metres(metres), Metres(longest)};
    };
    for (const RunProblem& run : transformer.runs)
        for (const RunNode& node : run.nodes)
            if (node.typed < 0)
                consider(node_id(site, circuit.nodes[at(node.node)]),
                         site.runs[circuit.runs[at(run.run)].run].id, node.metres);
    for (std::size_t l = 0; l < transformer.link_typed.size(); ++l)
        if (transformer.link_typed[l] < 0)
            consider(site.links[circuit.links[l].link].id, "", circuit.links[l].length->value());
    return found;
}

/// A complete choice with all that is open at its best, and what the solver says of it.
struct Best {
    Proposal proposal;
    Verdict verdict;
    bool carries = false; ///< cables, outputs and transformer carry the load
    double room = -1e300; ///< least distance of a lamp from the ends of its window
};

/// Goes through models and taps with the least resistance on every open length.
class BestCase {
  public:
    BestCase(const SizeProblem& problem, const TransformerProblem& transformer, Effort& effort)
        : problem_(problem), transformer_(transformer), effort_(effort), trial_(problem, transformer) {
        for (const int c : problem.candidates)
            if (thickest_ < 0 ||
                problem.cables[at(c)].ohms_per_metre < problem.cables[at(thickest_)].ohms_per_metre)
                thickest_ = c;
    }

    std::optional<Best> find() {
        Proposal proposal;
        for (const RunProblem& run : transformer_.runs) {
            proposal.cables.emplace_back();
            for (const RunNode& node : run.nodes) {
                if (node.typed < 0 && thickest_ < 0) return std::nullopt;
                proposal.cables.back().push_back(node.typed < 0 ? thickest_ : node.typed);
            }
        }
        for (const int link : transformer_.link_typed) {
            if (link < 0 && thickest_ < 0) return std::nullopt;
            proposal.link_cables.push_back(link < 0 ? thickest_ : link);
        }
        for (std::size_t m = transformer_.models.size(); m-- > 0;) { // the largest are mostly the dearest
            proposal.model = static_cast<int>(m);
            try_taps(proposal);
        }
        return best_;
    }

  private:
    void try_taps(Proposal proposal) {
        std::vector<std::vector<double>> taps;
        std::size_t choices = 1;
        for (const RunProblem& run : transformer_.runs) {
            taps.push_back(taps_for(transformer_.models[at(proposal.model)], run));
            if (taps.back().empty()) return;
            choices = std::min(choices * taps.back().size(), most_tap_choices + 1); // the product may be huge
        }
        const bool together = choices > most_tap_choices; // too many: all runs on the same step of their taps
        std::size_t steps = choices;
        if (together)
            for (const auto& list : taps)
                steps = std::min(steps, std::max<std::size_t>(list.size(), 1) * 8);
        for (std::size_t step = 0; step < steps; ++step) {
            if (best_ && effort_.spent()) return;
            effort_.spend(trial_.steps());
            std::size_t rest = step;
            proposal.taps.clear();
            for (const auto& list : taps) {
                const std::size_t pick = together ? std::min(step, list.size() - 1) : rest % list.size();
                rest /= list.size();
                proposal.taps.push_back(list[pick]);
            }
            judge(proposal);
        }
    }

    void judge(const Proposal& proposal) {
        Best found{proposal, trial_.judge(proposal), false, -1e300};
        if (found.verdict.breach != BreachKind::no_operating_point) {
            found.room = room(found.verdict);
            found.carries = trial_.carries();
        }
        const bool better = !best_ || (found.carries != best_->carries ? found.carries
                                       : found.carries                 ? found.room > best_->room
                                                                       : nearer(found, *best_));
        if (better) best_ = found;
    }

    /// Of two that do not carry the load, the one on the larger transformer, then with more room.
    bool nearer(const Best& a, const Best& b) const {
        const auto va = [&](const Best& best) {
            return transformer_.models[at(best.proposal.model)].type->va;
        };
        return va(a) != va(b) ? va(a) > va(b) : a.room > b.room;
    }

    double room(const Verdict& verdict) const {
        double least = verdict.weak ? verdict.found - verdict.allowed : 1e300;
        for (const RunProblem& run : transformer_.runs)
            for (const RunNode& node : run.nodes) {
                if (!node.lamp) continue;
                const double volts = trial_.solution().lamp_volts[at(node.node)];
                least = std::min({least, volts - node.lamp->low, node.lamp->high - volts});
            }
        return least;
    }

    const SizeProblem& problem_;
    const TransformerProblem& transformer_;
    Effort& effort_;
    Trial trial_;
    int thickest_ = -1;
    std::optional<Best> best_;
};

/// Words for what is wrong.
class Explanation {
  public:
    Explanation(const Site& site, const SizeProblem& problem, const TransformerProblem& transformer)
        : site_(site), transformer_(transformer),
          circuit_(problem.circuits->transformers[transformer.circuit]) {
        result.transformer = site.transformers[circuit_.transformer].id;
        result.part = result.transformer;
    }

    void nothing_to_choose_from(bool no_model) {
        result.reason = no_model
                            ? fmt::format("no priced {}transformer for a supply of {} in catalogs or [stock]",
                                          transformer_.needs_water_listing ? "water-listed " : "",
                                          nominal_volts_text(circuit_.supply))
                            : fmt::format("no priced cable for direct burial in catalogs or [stock] for {}",
                                          result.transformer);
    }

    void no_spool_holds(const LongPiece& piece) {
        result.part = piece.part;
        result.reason = fmt::format("the piece to {} is {} long, the longest spool of any cable is {}, and "
                                    "pieces are not joined",
                                    piece.part, words(piece.length), words(piece.longest_spool));
        own_way = fmt::format("put a splice on the way to {}, so that no piece is longer than {}, or add a "
                              "cable with a spool of at least {} to [stock] or the catalogs, and size again",
                              piece.part, words(piece.longest_spool), words(piece.length));
    }

    void no_tap() {
        result.reason =
            fmt::format("no transformer has a tap that suits every run of {}", result.transformer);
    }

    void describe(const Best& best) {
        const Verdict& verdict = best.verdict;
        trouble.breach = verdict.breach;
        if (verdict.run >= 0) trouble.run = site_.runs[circuit_.runs[at(verdict.run)].run].id;
        if (verdict.node >= 0) result.part = node_id(site_, circuit_.nodes[at(verdict.node)]);
        switch (verdict.breach) {
        case BreachKind::lamp_low:
        case BreachKind::lamp_high:
            lamp(verdict);
            break;
        case BreachKind::cable:
            result.reason =
                fmt::format("the thickest cable to {} carries {}, its ampacity is {}", result.part,
                            amps_text(Amperes(verdict.found)), amps_text(Amperes(verdict.allowed)));
            break;
        case BreachKind::secondary:
            result.part = trouble.run;
            result.reason =
                fmt::format("run {} draws {}, one output gives {}", trouble.run,
                            amps_text(Amperes(verdict.found)), amps_text(Amperes(verdict.allowed)));
            break;
        case BreachKind::loading:
            result.reason =
                fmt::format("the largest transformer for {} would be loaded to {}, the limit is {}",
                            result.transformer, percent_text(verdict.found), percent_text(verdict.allowed));
            break;
        case BreachKind::no_operating_point:
            result.reason = fmt::format("the lamps of {} ask for more than the thickest cable carries",
                                        result.transformer);
            name_heaviest_run();
            break;
        case BreachKind::contact_volts:
        case BreachKind::supply:
        case BreachKind::none:
            result.reason = "nothing was found within the effort";
            break;
        }
        trouble.part = result.part;
    }

    Infeasibility result;
    Trouble trouble;
    std::string own_way; ///< what would help beside the changes that are tried; may be empty

  private:
    std::string words(Metres length) const { return length_text(length, site_.settings.units); }

    void lamp(const Verdict& verdict) {
        result.best = Volts(verdict.found);
        result.needed = Volts(verdict.allowed);
        const bool low = verdict.breach == BreachKind::lamp_low;
        result.reason = fmt::format("with everything at its best {} gets {}{}, it needs {} {}", result.part,
                                    volts_text(*result.best), verdict.weak ? " on a weak supply" : "",
                                    low ? "at least" : "at most", volts_text(*result.needed));
    }

    void name_heaviest_run() {
        double most = -1;
        for (const RunProblem& run : transformer_.runs) {
            double va = 0;
            for (const RunNode& node : run.nodes)
                va += node.lamp ? node.lamp->power : 0;
            if (va <= most) continue;
            most = va;
            trouble.run = site_.runs[circuit_.runs[at(run.run)].run].id;
            for (const RunNode& node : run.nodes)
                if (node.lamp) result.part = node_id(site_, circuit_.nodes[at(node.node)]);
        }
    }

    const Site& site_;
    const TransformerProblem& transformer_;
    const TransformerCircuit& circuit_;
};

/// Whether a length of the tree or a link still waits for its cable.
bool has_open_cable(const TransformerProblem& transformer) {
    const auto& links = transformer.link_typed;
    return std::any_of(transformer.runs.begin(), transformer.runs.end(),
                       [](const RunProblem& run) { return run.has_open(); }) ||
           std::any_of(links.begin(), links.end(), [](int cable) { return cable < 0; });
}

} // namespace

Infeasibility explain_infeasible(const Site& site, const Catalog& catalog, const SiteLengths& lengths,
                                 const SizeProblem& problem, std::size_t index, Effort& effort) {
    const TransformerProblem& transformer = problem.transformers[index];
    Explanation explanation(site, problem, transformer);
    const bool needs_cable = has_open_cable(transformer);
    if (transformer.models.empty() || (needs_cable && problem.candidates.empty()))
        explanation.nothing_to_choose_from(transformer.models.empty());
    else if (const auto piece = longest_unheld(site, problem, transformer))
        explanation.no_spool_holds(*piece);
    else if (const auto best = BestCase(problem, transformer, effort).find())
        explanation.describe(*best);
    else
        explanation.no_tap();
    explanation.trouble.part = explanation.result.part;
    const PartSite part = part_site(site, lengths, problem.circuits->transformers[transformer.circuit]);
    const Remedied remedied = find_remedies(part, catalog, problem.options, explanation.trouble, effort);
    explanation.result.other_ways = remedied.ways;
    auto& ways = explanation.result.other_ways;
    if (!explanation.own_way.empty()) ways.push_back(explanation.own_way);
    if (!ways.empty()) {
        explanation.result.suggestion = ways.front();
        ways.erase(ways.begin());
    } else {
        explanation.result.suggestion =
            remedied.all_tried ? "none of the usual changes is enough by itself: fewer or smaller lights"
                               : "time or effort was used up before a change was found that is enough: give "
                                 "more with --time or --effort";
    }
    return explanation.result;
}

} // namespace rillwatt::sizing
