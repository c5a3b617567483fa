#include "rillwatt/search/spooled_site.hpp"

#include <algorithm>
#include <numeric>

namespace rillwatt::search {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double cost_rounding = 1e-9;
constexpr std::size_t most_partials = 4000;
constexpr std::size_t most_options = 1500; ///< listed for one transformer

/// Ways to list what serves a transformer: the quick ones first, so that the later ones have less to list.
std::vector<Listing> listings(const SizeOptions& options) {
    std::vector<Listing> ways{{false, 0, false}};
    if (!options.per_length) return ways;
    ways.push_back({true, 100, false});
    if (options.any_order) ways.push_back({true, 100, true});
    ways.push_back({true, 1000, options.any_order});
    ways.push_back({true, 0, options.any_order});
    return ways;
}

std::size_t at(int index) { return static_cast<std::size_t>(index); }

double price_of(const SpoolCable& spool) { return spool.type->price ? spool.type->price->value() : 0; }

bool buys_no_more(double plain, const std::vector<double>& spooled, double other_plain,
                  const std::vector<double>& other_spooled) {
    if (plain > other_plain + cost_rounding) return false;
    for (std::size_t k = 0; k < spooled.size(); ++k)
        if (spooled[k] > other_spooled[k] + cost_rounding) return false;
    return true;
}

double total_metres(const SizeProblem& problem, const SpoolCable& spool) {
    double metres = spool.typed_metres;
    for (const TransformerProblem& transformer : problem.transformers) {
        for (const RunProblem& run : transformer.runs)
            metres += run.open_metres();
        const TransformerCircuit& circuit = problem.circuits->transformers[transformer.circuit];
        for (std::size_t k = 0; k < transformer.link_typed.size(); ++k)
            if (transformer.link_typed[k] < 0) metres += circuit.links[k].length->value();
    }
    return metres;
}

} // namespace

std::vector<SpoolTable> spool_tables(const SizeProblem& problem) {
    std::vector<SpoolTable> tables;
    for (const SpoolCable& spool : problem.spools)
        tables.emplace_back(spool.type->spools, total_metres(problem, spool));
    return tables;
}

double spool_cost(const SizeProblem& problem, const std::vector<SpoolTable>& tables,
                  const std::vector<double>& chosen_metres) {
    double cost = 0;
    for (std::size_t k = 0; k < tables.size(); ++k)
        cost += price_of(problem.spools[k]) *
                tables[k].covering(problem.spools[k].typed_metres + chosen_metres[k]);
    return cost;
}

SpooledSite::SpooledSite(const SizeProblem& problem, std::vector<TransformerSizing>& sizings, Effort& effort)
    : problem_(problem), sizings_(sizings), effort_(effort), tables_(spool_tables(problem)),
      lists_(sizings.size()), list_bounds_(sizings.size(), infinity), base_(problem.typed_cost) {
    for (const SpoolCable& spool : problem_.spools)
        base_ += price_of(spool) * spool.typed_metres;
    for (const TransformerSizing& sizing : sizings_)
        least_.push_back(sizing.bound());
}

Purchase SpooledSite::purchase(const TransformerProblem& transformer, const Proposal& proposal) const {
    Purchase bought{proposal, transformer.models[at(proposal.model)].price,
                    std::vector<double>(problem_.spools.size(), 0), 0};
    const auto lay = [&](int cable, double metres) {
        const Cable& type = problem_.cables[at(cable)];
        if (type.spool < 0)
            bought.plain += type.price * metres;
        else
            bought.spooled[at(type.spool)] += metres;
    };
    for (std::size_t r = 0; r < transformer.runs.size(); ++r)
        for (std::size_t i = 0; i < transformer.runs[r].nodes.size(); ++i)
            if (transformer.runs[r].nodes[i].typed < 0)
                lay(proposal.cables[r][i], transformer.runs[r].nodes[i].metres);
    const TransformerCircuit& circuit = problem_.circuits->transformers[transformer.circuit];
    for (std::size_t k = 0; k < transformer.link_typed.size(); ++k)
        if (transformer.link_typed[k] < 0) lay(proposal.link_cables[k], circuit.links[k].length->value());
    bought.linear = bought.plain;
    for (std::size_t k = 0; k < bought.spooled.size(); ++k)
        bought.linear += price_of(problem_.spools[k]) * bought.spooled[k];
    return bought;
}

void SpooledSite::list_options(std::size_t index, double limit, const Listing& how, Effort& effort) {
    TransformerSizing& sizing = sizings_[index];
    std::vector<Purchase>& list = lists_[index];
    bool many_slots = false;
    for (const int candidate : problem_.candidates)
        many_slots = many_slots || problem_.cables[at(candidate)].spool >= static_cast<int>(spool_slots);
    const auto source = sizing.source(limit, how, !many_slots, effort);
    if (!source) list_bounds_[index] = least_[index]; // the effort ran out before there was anything to list
    while (source) {
        const auto candidate = source->next();
        if (!candidate) {
            if (effort.spent()) list_bounds_[index] = std::min(list_bounds_[index], source->bound());
            break;
        }
        if (candidate->cost > limit + cost_rounding) break;
        if (list.size() >= most_options) {
            list_bounds_[index] = std::min(list_bounds_[index], candidate->cost);
            break;
        }
        const Purchase bought = purchase(sizing.transformer(), candidate->proposal);
        const bool useless = std::any_of(list.begin(), list.end(), [&](const Purchase& other) {
            return buys_no_more(other.plain, other.spooled, bought.plain, bought.spooled);
        });
        if (useless && candidate->exact) continue;
        effort.spend(20);
        const bool holds = sizing.trial().judge(candidate->proposal).feasible;
        if (!candidate->exact && (!holds || many_slots))
            list_bounds_[index] = std::min(list_bounds_[index], candidate->cost);
        if (holds && !useless) list.push_back(bought);
    }
    if (many_slots && problem_.options.per_length && !list.empty())
        list_bounds_[index] = std::min(list_bounds_[index], list.front().linear);
}

double SpooledSite::whole_cost(const Partial& partial) const {
    return problem_.typed_cost + partial.plain + spool_cost(problem_, tables_, partial.spooled);
}

std::vector<SpooledSite::Partial> SpooledSite::extended(const std::vector<Partial>& partials,
                                                        std::size_t index, double best) {
    const double rest = std::accumulate(least_.begin() + static_cast<long>(index) + 1, least_.end(), 0.0);
    std::vector<Partial> longer;
    for (const Partial& partial : partials) {
        const int step = static_cast<int>(trail_.size());
        trail_.push_back({partial.before, partial.option});
        for (std::size_t k = 0; k < lists_[index].size(); ++k) {
            const Purchase& bought = lists_[index][k];
            Partial next = partial;
            next.linear += bought.linear;
            if (base_ + next.linear + rest >= best - cost_rounding) break; // the list ascends
            next.plain += bought.plain;
            for (std::size_t s = 0; s < next.spooled.size(); ++s)
                next.spooled[s] += bought.spooled[s];
            if (whole_cost(next) >= best - cost_rounding) continue;
            next.before = step;
            next.option = k;
            longer.push_back(std::move(next));
        }
        effort_.spend(lists_[index].size() / 8 + 1);
    }
    return longer;
}

void SpooledSite::keep_undominated(std::vector<Partial>& partials) {
    std::stable_sort(partials.begin(), partials.end(),
                     [](const Partial& a, const Partial& b) { return a.linear < b.linear; });
    std::vector<Partial> kept;
    for (Partial& partial : partials) {
        const bool useless = std::any_of(kept.begin(), kept.end(), [&](const Partial& other) {
            return buys_no_more(other.plain, other.spooled, partial.plain, partial.spooled);
        });
        if (useless) continue;
        if (kept.size() == most_partials) {
            dropped_ = std::min(dropped_, partial.linear);
            break;
        }
        kept.push_back(std::move(partial));
    }
    effort_.spend(kept.size());
    partials = std::move(kept);
}

void SpooledSite::take(const Partial& partial, SiteAnswer& answer) const {
    Step step{partial.before, partial.option};
    for (std::size_t index = sizings_.size(); index-- > 0;) {
        answer.proposals[index] = lists_[index][step.option].proposal;
        if (step.before >= 0) step = trail_[at(step.before)];
    }
}

/// Puts the lists together, transformer by transformer. Returns what no choice that is not listed goes below.
double SpooledSite::combine(SiteAnswer& answer) {
    std::vector<Partial> partials(1);
    partials[0].spooled.assign(problem_.spools.size(), 0);
    trail_.clear();
    double bound = infinity;
    for (std::size_t index = 0; index < sizings_.size(); ++index) {
        partials = extended(partials, index, answer.cost);
        dropped_ = infinity;
        if (index + 1 < sizings_.size()) keep_undominated(partials);
        const double rest = std::accumulate(least_.begin() + static_cast<long>(index) + 1, least_.end(), 0.0);
        bound = std::min(bound, base_ + dropped_ + rest);
    }
    for (const Partial& partial : partials) {
        const double cost = whole_cost(partial);
        if (cost >= answer.cost - cost_rounding) continue;
        answer.cost = cost;
        take(partial, answer);
    }
    const double least = base_ + std::accumulate(least_.begin(), least_.end(), 0.0);
    for (std::size_t index = 0; index < sizings_.size(); ++index)
        bound = std::min(bound, least - least_[index] + list_bounds_[index]);
    return bound;
}

/// Lists what serves each transformer in one of the ways and combines the lists.
void SpooledSite::improve_by(const Listing& how, SiteAnswer& answer) {
    const double least = base_ + std::accumulate(least_.begin(), least_.end(), 0.0);
    for (std::size_t index = 0; index < sizings_.size(); ++index) {
        Effort share = effort_.share(2 * (sizings_.size() - index));
        lists_[index].clear();
        list_bounds_[index] = infinity;
        list_options(index, answer.cost - (least - least_[index]), how, share);
        effort_.spend(share.used());
        if (!lists_[index].empty()) continue;
        // nothing cheaper than the answer's own way: list that one
        lists_[index].push_back(purchase(sizings_[index].transformer(), *answer.proposals[index]));
    }
    const double bound = combine(answer);
    if (how.per_length == problem_.options.per_length &&
        (!how.per_length || how.any_order == problem_.options.any_order))
        answer.bound = std::max(answer.bound, std::min(bound, answer.cost));
}

void SpooledSite::improve(SiteAnswer& answer) {
    answer.bound = std::max(answer.bound, base_ + std::accumulate(least_.begin(), least_.end(), 0.0));
    for (const Listing& how : listings(problem_.options)) {
        if (answer.bound >= answer.cost - cost_rounding || effort_.spent()) break;
        improve_by(how, answer);
    }
}

} // namespace rillwatt::search
