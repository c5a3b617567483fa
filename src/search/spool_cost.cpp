#include "rillwatt/search/spool_cost.hpp"

#include <algorithm>
#include <limits>

namespace rillwatt::search {

namespace {

constexpr std::size_t most_known = 50'000; ///< packings remembered of one cable

std::size_t at(int index) { return static_cast<std::size_t>(index); }

} // namespace

Purchase purchase_of(const SizeProblem& problem, const TransformerProblem& transformer,
                     const Proposal& proposal) {
    Purchase bought{transformer.models[at(proposal.model)].price,
                    std::vector<std::vector<Length>>(problem.spools.size())};
    const auto lay = [&](int cable, double metres) {
        const Cable& type = problem.cables[at(cable)];
        if (type.spool < 0)
            bought.plain += type.price * metres;
        else
            bought.pieces[at(type.spool)].push_back(whole_length(metres));
    };
    for (std::size_t r = 0; r < transformer.runs.size(); ++r)
        for (std::size_t i = 0; i < transformer.runs[r].nodes.size(); ++i)
            if (transformer.runs[r].nodes[i].typed < 0)
                lay(proposal.cables[r][i], transformer.runs[r].nodes[i].metres);
    const TransformerCircuit& circuit = problem.circuits->transformers[transformer.circuit];
    for (std::size_t k = 0; k < transformer.link_typed.size(); ++k)
        if (transformer.link_typed[k] < 0) lay(proposal.link_cables[k], circuit.links[k].length->value());
    return bought;
}

void add(Purchase& to, const Purchase& more) {
    to.plain += more.plain;
    to.pieces.resize(std::max(to.pieces.size(), more.pieces.size()));
    for (std::size_t k = 0; k < more.pieces.size(); ++k)
        to.pieces[k].insert(to.pieces[k].end(), more.pieces[k].begin(), more.pieces[k].end());
}

SpoolCost::SpoolCost(const SizeProblem& problem, std::size_t effort)
    : problem_(problem), effort_(effort), known_(problem.spools.size()) {}

CostRange SpoolCost::of_spools(std::size_t spool, const std::vector<Length>& pieces) {
    const SpoolCable& cable = problem_.spools[spool];
    std::vector<Length> all = pieces;
    all.insert(all.end(), cable.typed.begin(), cable.typed.end());
    if (all.empty()) return {};
    std::sort(all.begin(), all.end());
    auto& known = known_[spool];
    if (const auto it = known.find(all); it != known.end()) return it->second;
    const Packing packing = pack(cable.sold, all, effort_);
    const CostRange range{cable.price * metres_of(packing.bought), cable.price * metres_of(packing.bound)};
    if (known.size() < most_known) known.emplace(std::move(all), range);
    return range;
}

CostRange SpoolCost::of(const Purchase& purchase) {
    const double plain = problem_.typed_cost + purchase.plain;
    CostRange range{plain, plain};
    for (std::size_t k = 0; k < problem_.spools.size(); ++k) {
        static const std::vector<Length> none;
        const CostRange spools = of_spools(k, k < purchase.pieces.size() ? purchase.pieces[k] : none);
        range.cost += spools.cost;
        range.bound += spools.bound;
    }
    return range;
}

double site_cost(const SizeProblem& problem, const std::vector<std::optional<Proposal>>& proposals) {
    Purchase bought;
    for (std::size_t t = 0; t < proposals.size(); ++t) {
        if (!proposals[t]) return std::numeric_limits<double>::infinity();
        add(bought, purchase_of(problem, problem.transformers[t], *proposals[t]));
    }
    return SpoolCost(problem).of(bought).cost;
}

} // namespace rillwatt::search
