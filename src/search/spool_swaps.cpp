#include "rillwatt/search/spool_swaps.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace rillwatt::search {

namespace {

constexpr double cost_rounding = 1e-9;
constexpr std::size_t swap_packing_effort = 2'000;
constexpr double hottest = 0.003;    ///< temperature at the start, as a share of the cost
constexpr double coldest = 0.0003;   ///< and at the end
constexpr double supply_share = 0.1; ///< of the changes that concern taps and models
constexpr double tap_share = 0.7;    ///< of those, that concern taps
constexpr double second_share = 0.5; ///< of the changes that are made of two

std::size_t at(int index) { return static_cast<std::size_t>(index); }

} // namespace

SpoolSwaps::SpoolSwaps(const SizeProblem& problem, Effort& effort)
    : problem_(problem), effort_(effort), cost_(problem, swap_packing_effort) {
    Length most = 1;
    for (std::size_t t = 0; t < problem.transformers.size(); ++t) {
        trials_.emplace_back(problem, problem.transformers[t]);
        add_groups(t);
        for (const RunProblem& run : problem.transformers[t].runs)
            most += whole_length(run.open_metres());
    }
    for (const Group& group : groups_)
        if (group.link >= 0) most += whole_length(1e3);
    for (const SpoolCable& cable : problem.spools)
        totals_.emplace_back(cable.sold, std::accumulate(cable.typed.begin(), cable.typed.end(), most));
}

void SpoolSwaps::add_groups(std::size_t t) {
    const TransformerProblem& transformer = problem_.transformers[t];
    fed_.emplace_back();
    for (std::size_t r = 0; r < transformer.runs.size(); ++r) {
        const auto& nodes = transformer.runs[r].nodes;
        fed_[t].emplace_back(nodes.size());
        Group whole{t, r, {}, -1};
        for (std::size_t i = 0; i < nodes.size(); ++i) {
            if (nodes[i].parent >= 0) fed_[t][r][at(nodes[i].parent)].push_back(i);
            if (nodes[i].typed >= 0) continue;
            whole.nodes.push_back(i);
            if (problem_.options.per_length) groups_.push_back({t, r, {i}, -1});
        }
        if (!problem_.options.per_length && !whole.nodes.empty()) groups_.push_back(whole);
    }
    for (std::size_t k = 0; k < transformer.link_typed.size(); ++k)
        if (transformer.link_typed[k] < 0) groups_.push_back({t, 0, {}, static_cast<int>(k)});
}

/// Steele, Lea, Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014, 453-472.
std::uint64_t SpoolSwaps::draw() {
    std::uint64_t mixed = state_ += 0x9e3779b97f4a7c15ULL;
    mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9ULL;
    mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111ebULL;
    return mixed ^ (mixed >> 31);
}

double SpoolSwaps::draw_share() { return static_cast<double>(draw() >> 11) * 0x1p-53; }

void SpoolSwaps::lay(int cable, double metres, double sign) {
    const Cable& type = problem_.cables[at(cable)];
    if (type.spool < 0)
        plain_ += sign * type.price * metres;
    else
        metres_[at(type.spool)] += sign * metres;
}

/// Counts the present choice anew.
void SpoolSwaps::measure() {
    plain_ = problem_.typed_cost;
    metres_.assign(problem_.spools.size(), 0);
    for (std::size_t k = 0; k < metres_.size(); ++k)
        for (const Length piece : problem_.spools[k].typed)
            metres_[k] += metres_of(piece);
    for (std::size_t t = 0; t < now_.size(); ++t) {
        const Purchase bought = purchase_of(problem_, problem_.transformers[t], now_[t]);
        plain_ += bought.plain;
        for (std::size_t k = 0; k < metres_.size(); ++k)
            for (const Length piece : bought.pieces[k])
                metres_[k] += metres_of(piece);
    }
}

void SpoolSwaps::keep_before(std::size_t t, std::vector<Change>& changes) const {
    for (const Change& change : changes)
        if (change.transformer == t) return;
    changes.push_back({t, now_[t]});
}

void SpoolSwaps::set_length(std::size_t t, std::size_t run, std::size_t node, int cable) {
    const RunNode& length = problem_.transformers[t].runs[run].nodes[node];
    lay(now_[t].cables[run][node], length.metres, -1);
    lay(cable, length.metres, 1);
    now_[t].cables[run][node] = cable;
}

/// Where order counts, thinner lengths that feed a chosen one get its cable too, and thicker ones that
/// follow.
void SpoolSwaps::set_cable(const Group& group, int cable) {
    const std::size_t t = group.transformer;
    for (const std::size_t i : group.nodes)
        set_length(t, group.run, i, cable);
    if (!problem_.options.per_length || problem_.options.any_order) return;
    const auto& nodes = problem_.transformers[t].runs[group.run].nodes;
    const auto thickness = [&](std::size_t i) {
        return problem_.cables[at(now_[t].cables[group.run][i])].thickness;
    };
    const int mine = problem_.cables[at(cable)].thickness;
    for (int feed = nodes[group.nodes.front()].parent;
         feed >= 0 && nodes[at(feed)].typed < 0 && thickness(at(feed)) < mine; feed = nodes[at(feed)].parent)
        set_length(t, group.run, at(feed), cable);
    std::vector<std::size_t> follow = fed_[t][group.run][group.nodes.front()];
    while (!follow.empty()) {
        const std::size_t i = follow.back();
        follow.pop_back();
        if (nodes[i].typed >= 0 || thickness(i) <= mine) continue;
        set_length(t, group.run, i, cable);
        follow.insert(follow.end(), fed_[t][group.run][i].begin(), fed_[t][group.run][i].end());
    }
}

bool SpoolSwaps::change_cable(std::vector<Change>& changes) {
    if (groups_.empty()) return false;
    const Group& group = groups_[draw() % groups_.size()];
    const int cable = problem_.candidates[draw() % problem_.candidates.size()];
    keep_before(group.transformer, changes);
    Proposal& proposal = now_[group.transformer];
    if (group.link < 0) {
        if (proposal.cables[group.run][group.nodes.front()] == cable) return false;
        set_cable(group, cable);
        return true;
    }
    const TransformerProblem& transformer = problem_.transformers[group.transformer];
    const double metres =
        problem_.circuits->transformers[transformer.circuit].links[at(group.link)].length->value();
    if (!problem_.cables[at(cable)].holds(metres)) return false;
    int& link = proposal.link_cables[at(group.link)];
    lay(link, metres, -1);
    lay(cable, metres, 1);
    link = cable;
    return true;
}

/// Another tap for a run, or another model that has all the taps in use.
bool SpoolSwaps::change_supply(std::vector<Change>& changes) {
    const std::size_t t = draw() % now_.size();
    const TransformerProblem& transformer = problem_.transformers[t];
    Proposal& proposal = now_[t];
    keep_before(t, changes);
    if (draw_share() < tap_share) {
        if (transformer.meshed) return false; // linked runs are on one tap
        const std::size_t r = draw() % transformer.runs.size();
        const auto taps = taps_for(transformer.models[at(proposal.model)], transformer.runs[r]);
        const double tap = taps[draw() % taps.size()];
        if (tap == proposal.taps[r]) return false;
        proposal.taps[r] = tap;
        return true;
    }
    const auto model = static_cast<int>(draw() % transformer.models.size());
    if (model == proposal.model) return false;
    for (std::size_t r = 0; r < transformer.runs.size(); ++r) {
        const auto taps = taps_for(transformer.models[at(model)], transformer.runs[r]);
        if (std::find(taps.begin(), taps.end(), proposal.taps[r]) == taps.end()) return false;
    }
    plain_ += transformer.models[at(model)].price - transformer.models[at(proposal.model)].price;
    proposal.model = model;
    return true;
}

bool SpoolSwaps::change_something(std::vector<Change>& changes) {
    if (draw_share() < supply_share) return change_supply(changes);
    if (!change_cable(changes)) return false;
    return draw_share() >= second_share || change_cable(changes);
}

void SpoolSwaps::undo(std::vector<Change>& changes) {
    for (Change& change : changes)
        now_[change.transformer] = std::move(change.before);
}

double SpoolSwaps::covering_cost() const {
    double cost = plain_;
    for (std::size_t k = 0; k < metres_.size(); ++k)
        if (metres_[k] > 1e-5)
            cost +=
                problem_.spools[k].price * metres_of(totals_[k].covering(whole_length(metres_[k] - 1e-5)));
    return cost;
}

double SpoolSwaps::weight() const {
    double linear = plain_;
    for (std::size_t k = 0; k < metres_.size(); ++k)
        linear += problem_.spools[k].price * metres_[k];
    return (linear + covering_cost()) / 2;
}

/// Whether what was changed still works: pieces fit their spools, circuits their limits.
bool SpoolSwaps::holds(const std::vector<Change>& changes) {
    for (const Change& change : changes) {
        const TransformerProblem& transformer = problem_.transformers[change.transformer];
        const Proposal& proposal = now_[change.transformer];
        std::size_t lengths = 0;
        for (std::size_t r = 0; r < transformer.runs.size(); ++r) {
            const auto& nodes = transformer.runs[r].nodes;
            lengths += nodes.size();
            for (std::size_t i = 0; i < nodes.size(); ++i)
                if (nodes[i].typed < 0 && !problem_.cables[at(proposal.cables[r][i])].holds(nodes[i].metres))
                    return false;
        }
        effort_.spend(10 + lengths);
        if (!trials_[change.transformer].judge(proposal).feasible) return false;
    }
    return true;
}

void SpoolSwaps::anneal(const std::vector<std::optional<Proposal>>& start, std::size_t steps,
                        std::vector<std::optional<Proposal>>& best, double& cost) {
    now_.clear();
    for (const auto& proposal : start)
        now_.push_back(*proposal);
    measure();
    double here = weight();
    const double hot = hottest * here;
    for (std::size_t step = 0; step < steps && !effort_.spent(); ++step) {
        const double done = static_cast<double>(step) / static_cast<double>(steps);
        const double temperature = hot * std::pow(coldest / hottest, done);
        const double plain = plain_;
        const std::vector<double> metres = metres_;
        std::vector<Change> changes;
        const bool changed = change_something(changes);
        const double there = weight();
        effort_.spend(1);
        if (!changed || there > here - temperature * std::log(draw_share() + 1e-12) || !holds(changes)) {
            undo(changes);
            plain_ = plain;
            metres_ = metres;
            continue;
        }
        here = there;
        if (covering_cost() >= cost - cost_rounding) continue;
        Purchase bought;
        for (std::size_t t = 0; t < now_.size(); ++t)
            add(bought, purchase_of(problem_, problem_.transformers[t], now_[t]));
        const double packed = cost_.of(bought).cost;
        if (packed >= cost - cost_rounding) continue;
        cost = packed;
        best.assign(now_.begin(), now_.end());
    }
}

} // namespace rillwatt::search
