#include "rillwatt/search/site_search.hpp"

#include "rillwatt/search/side_by_side.hpp"
#include "rillwatt/search/spooled_site.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt::search {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr std::size_t unlimited = std::numeric_limits<std::size_t>::max();
constexpr std::size_t least_effort = 4'000'000;
constexpr std::size_t full_effort_lengths = 1000; ///< so many are searched thoroughly
constexpr std::size_t full_effort = 10'500;       ///< for each of them
constexpr std::size_t further_effort = 3'400;     ///< for each length beyond

/// One pass over the transformers that are not settled, with an even part of the effort left for each. The
/// first pass is made whatever it takes.
bool make_pass(std::vector<TransformerSizing>& sizings, std::size_t limit, const SizeOptions& options,
               Effort& effort) {
    std::vector<TransformerSizing*> waiting;
    for (TransformerSizing& sizing : sizings)
        if (!sizing.settled() && (!sizing.started() || !effort.spent())) waiting.push_back(&sizing);
    if (waiting.empty()) return false;
    const std::size_t left = (limit - std::min(limit, effort.used())) / waiting.size();
    std::vector<Effort> shares;
    for (const TransformerSizing* sizing : waiting)
        shares.emplace_back(sizing->started() ? left : unlimited, options.out_of_time);
    std::vector<char> moved(waiting.size(), 0);
    side_by_side(waiting.size(), [&](std::size_t i) { moved[i] = waiting[i]->improve(shares[i]) ? 1 : 0; });
    for (const Effort& share : shares)
        effort.spend(share.used());
    return std::find(moved.begin(), moved.end(), 1) != moved.end();
}

} // namespace

double site_cost(const SizeProblem& problem, const std::vector<std::optional<Proposal>>& proposals) {
    double cost = problem.typed_cost;
    std::vector<double> spooled(problem.spools.size(), 0);
    for (std::size_t t = 0; t < proposals.size(); ++t) {
        if (!proposals[t]) return infinity;
        const TransformerProblem& transformer = problem.transformers[t];
        cost += linear_cost(problem, transformer, *proposals[t]);
        const auto lay = [&](int index, double metres) {
            const Cable& cable = problem.cables[static_cast<std::size_t>(index)];
            if (cable.spool < 0) return;
            cost -= cable.price * metres;
            spooled[static_cast<std::size_t>(cable.spool)] += metres;
        };
        for (std::size_t r = 0; r < transformer.runs.size(); ++r)
            for (std::size_t i = 0; i < transformer.runs[r].nodes.size(); ++i)
                if (transformer.runs[r].nodes[i].typed < 0)
                    lay(proposals[t]->cables[r][i], transformer.runs[r].nodes[i].metres);
        const TransformerCircuit& circuit = problem.circuits->transformers[transformer.circuit];
        for (std::size_t k = 0; k < transformer.link_typed.size(); ++k)
            if (transformer.link_typed[k] < 0)
                lay(proposals[t]->link_cables[k], circuit.links[k].length->value());
    }
    return cost + spool_cost(problem, spool_tables(problem), spooled);
}

std::size_t usual_effort(const SizeProblem& problem) {
    std::size_t lengths = 0;
    for (const TransformerProblem& transformer : problem.transformers)
        for (const RunProblem& run : transformer.runs)
            lengths += run.nodes.size();
    const std::size_t full = std::min(lengths, full_effort_lengths);
    return std::max(least_effort, full_effort * full + further_effort * (lengths - full));
}

SiteAnswer search_site(const SizeProblem& problem, Effort& effort) {
    std::vector<TransformerSizing> sizings;
    sizings.reserve(problem.transformers.size());
    for (const TransformerProblem& transformer : problem.transformers)
        sizings.emplace_back(problem, transformer);
    const bool spooled =
        std::any_of(problem.candidates.begin(), problem.candidates.end(), [&](int candidate) {
            return problem.cables[static_cast<std::size_t>(candidate)].spool >= 0;
        });
    const std::size_t limit = spooled ? effort.limit() / 2 : effort.limit();
    while (make_pass(sizings, limit, problem.options, effort)) {
    }
    SiteAnswer answer;
    answer.bound = problem.typed_cost +
                   spool_cost(problem, spool_tables(problem), std::vector<double>(problem.spools.size(), 0));
    for (std::size_t t = 0; t < sizings.size(); ++t) {
        answer.proposals.push_back(sizings[t].best());
        answer.bound += sizings[t].bound();
        if (sizings[t].bound() == infinity) answer.hopeless.push_back(t);
    }
    answer.cost = site_cost(problem, answer.proposals);
    if (!spooled) {
        answer.bound = std::min(answer.bound, answer.cost);
        return answer;
    }
    if (answer.cost < infinity) {
        answer.bound = problem.typed_cost;
        SpooledSite(problem, sizings, effort).improve(answer);
    }
    return answer;
}

} // namespace rillwatt::search
