#include "rillwatt/search/transformer_search.hpp"

#include "rillwatt/limits/standing.hpp"
#include "rillwatt/search/supply.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt::search {

namespace {

constexpr std::size_t grid_points = 33;
constexpr double weighing_slack = 1e-6; ///< money: what interpolated volt-amperes may be off by, priced
constexpr int sag_steps = 60;
constexpr double sag_rounding = 1e-13;
constexpr double halving_end = 1e-10;
constexpr double loading_slack = 5e-5; ///< of the rating, that interpolated volt-amperes may be off by
constexpr double infinity = std::numeric_limits<double>::infinity();

std::size_t at(int index) { return static_cast<std::size_t>(index); }

double grid_sag(const CaseTables& tables, double ratio, std::size_t k) {
    return tables.least_sag + (ratio - tables.least_sag) * static_cast<double>(k) / (grid_points - 1);
}

/// The cell of the grid that a sag lies in.
std::size_t cell_of(const CaseTables& tables, double ratio, double sag) {
    const double place = ratio > tables.least_sag ? (sag - tables.least_sag) / (ratio - tables.least_sag) : 1;
    return static_cast<std::size_t>(std::clamp(place, 0.0, 1.0) * (grid_points - 1));
}

/// Least cost among options whose low sag is at most `sag`.
double least_cost_at(const std::vector<std::pair<double, double>>& reach, double sag) {
    const auto after = std::upper_bound(reach.begin(), reach.end(), std::pair(sag + sag_slack, infinity));
    return after == reach.begin() ? infinity : std::prev(after)->second;
}

std::vector<std::pair<double, double>> reach_of(const std::vector<RunOption>& options, Supplied supplied) {
    std::vector<std::pair<double, double>> reach;
    for (const RunOption& option : options)
        reach.emplace_back(option.low_sag[supplied], option.cost);
    std::sort(reach.begin(), reach.end());
    for (std::size_t i = 1; i < reach.size(); ++i)
        reach[i].second = std::min(reach[i].second, reach[i - 1].second);
    return reach;
}

/// Halves the distance between a sag without surplus and a greater one with it. Never below the crossing.
template<class Surplus>
double greatest_between(const Surplus& surplus, double below, double above) {
    while (above - below > halving_end) {
        const double middle = (below + above) / 2;
        if (middle <= below || middle >= above) break;
        (surplus(middle) <= 0 ? below : above) = middle;
    }
    return above;
}

} // namespace

bool TransformerSearch::Later::operator()(const State& a, const State& b) const {
    if (a.bound != b.bound) return a.bound > b.bound;
    if (a.depth != b.depth) return a.depth < b.depth;
    if (a.model != b.model) return a.model > b.model;
    if (a.option != b.option) return a.option > b.option;
    return a.parent > b.parent;
}

TransformerSearch::TransformerSearch(const SizeProblem& problem, const TransformerProblem& transformer,
                                     const std::vector<RunLabels>& runs, Effort& effort)
    : problem_(problem), transformer_(transformer), runs_(runs), effort_(effort) {
    for (const RunLabels& run : runs_) {
        for (const Supplied supplied : cases())
            powers_[supplied].emplace_back();
        for (const Label& label : run.labels) {
            powers_[Supplied::nominal].back().emplace_back(label.curve);
            if (problem_.weak) powers_[Supplied::weak].back().emplace_back(label.weak.curve);
        }
    }
    for (const RunProblem& run : transformer_.runs)
        most_amps_.push_back(most_amps_at_head(run));
    for (std::size_t m = 0; m < transformer_.models.size(); ++m)
        add_model(static_cast<int>(m));
}

std::span<const Supplied> TransformerSearch::cases() const {
    static constexpr std::array<Supplied, 2> all{Supplied::nominal, Supplied::weak};
    return {all.data(), problem_.weak ? all.size() : 1};
}

double TransformerSearch::ratio(const ModelOptions& set, Supplied supplied) const {
    return transformer_.models[at(set.model)].ratio_in(supplied);
}

/// Whether the sags allow an option's volts.
bool TransformerSearch::allows(const PerCase<double>& sag, const RunOption& option, double slack) const {
    return std::all_of(cases().begin(), cases().end(),
                       [&](Supplied supplied) { return option.low_sag[supplied] <= sag[supplied] + slack; });
}

/// Least cost of a run's options that the sags allow, or less: each case is asked by itself.
double TransformerSearch::least_cost(const ModelOptions& set, std::size_t run,
                                     const PerCase<double>& sag) const {
    double cost = 0;
    for (const Supplied supplied : cases())
        cost = std::max(cost, least_cost_at(set.tables[supplied].reach[run], sag[supplied]));
    return cost;
}

/// Cuts an option to the volts at which its current keeps the limit of one output.
bool TransformerSearch::limit_current(RunOption& option, const Label& label, double limit,
                                      double ratio) const {
    if (sample(label.curve, option.tap * ratio) <= limit) {
        if (sample(label.curve, label.low) <= limit) return true;
        double inside = option.tap * ratio;
        double outside = std::min(label.low, inside);
        for (int step = 0; step < 50; ++step) {
            const double middle = (inside + outside) / 2;
            (sample(label.curve, middle) <= limit ? inside : outside) = middle;
        }
        double& low = option.low_sag[Supplied::nominal];
        low = std::max(low, outside / option.tap);
        return true;
    }
    return sample(label.curve, label.low) <= limit; // rising currents: the solver decides
}

/// Whether one option of a label does whatever another one does.
bool TransformerSearch::dominates(const ModelOptions& set, std::size_t run, const RunOption& a,
                                  const RunOption& b) const {
    if (a.high_sag < ratio(set)) return false;
    return std::all_of(cases().begin(), cases().end(), [&](Supplied supplied) {
        const double top = ratio(set, supplied);
        const double least = std::max(set.tables[supplied].least_sag, b.low_sag[supplied]);
        return a.low_sag[supplied] <= b.low_sag[supplied] &&
               share(run, a, top, supplied) <= share(run, b, top, supplied) &&
               share(run, a, least, supplied) <= share(run, b, least, supplied);
    });
}

bool TransformerSearch::add_options(ModelOptions& set, std::size_t run) const {
    const Model& model = transformer_.models[at(set.model)];
    const double limit = most_amps(*model.type);
    std::vector<double> taps = bearable_taps(problem_, model, transformer_.runs[run]);
    std::sort(taps.rbegin(), taps.rend());
    std::vector<RunOption>& options = set.options[run];
    const PerCase<double> most{{ratio(set), ratio(set, Supplied::weak)}};
    const std::vector<Label>& labels = runs_[run].labels;
    for (std::size_t l = 0; l < labels.size(); ++l) {
        const Label& label = labels[l];
        const auto first = static_cast<std::ptrdiff_t>(options.size());
        for (const double tap : taps) {
            RunOption option{tap,
                             static_cast<int>(l),
                             label.cost,
                             {{label.low / tap, label.weak.low / tap}},
                             label.high / tap};
            if (!allows(most, option)) continue;
            if (option.high_sag < set.tables[Supplied::nominal].least_sag - sag_slack) continue;
            if (!limit_current(option, label, limit, ratio(set))) continue;
            if (std::none_of(options.begin() + first, options.end(),
                             [&](const RunOption& other) { return dominates(set, run, other, option); }))
                options.push_back(option);
        }
    }
    std::stable_sort(options.begin(), options.end(),
                     [](const RunOption& a, const RunOption& b) { return a.cost < b.cost; });
    return !options.empty();
}

/// Tabulates least shares and costs in one case. On a weak supply no loading limit bounds the sag from below,
/// but the run does that asks for the most. False where there is no sag at all.
bool TransformerSearch::tabulate_case(ModelOptions& set, Supplied supplied) const {
    CaseTables& tables = set.tables[supplied];
    const double top = ratio(set, supplied);
    tables.least_share.assign(set.options.size(), std::vector<double>(grid_points, infinity));
    for (const auto& options : set.options)
        tables.reach.push_back(reach_of(options, supplied));
    if (supplied == Supplied::weak)
        for (const auto& reach : tables.reach)
            tables.least_sag = std::max(tables.least_sag, reach.front().first);
    if (tables.least_sag > top + sag_slack) return false;
    for (std::size_t r = 0; r < set.options.size(); ++r) {
        for (const RunOption& option : set.options[r]) {
            double here = share(r, option, grid_sag(tables, top, 0), supplied);
            for (std::size_t k = 0; k < grid_points; ++k) {
                const double right = grid_sag(tables, top, std::min(k + 1, grid_points - 1));
                const double there = share(r, option, right, supplied);
                double& least = tables.least_share[r][k];
                if (option.low_sag[supplied] <= right + sag_slack) least = std::min({least, here, there});
                here = there;
            }
        }
    }
    return true;
}

void TransformerSearch::add_model(int model) {
    const Model& entry = transformer_.models[at(model)];
    if (!carries(entry, least_lamp_va(transformer_), problem_.options.loading)) return;
    ModelOptions set;
    set.model = model;
    set.tables[Supplied::nominal].least_sag = sag_at_limit(entry, problem_.options.loading);
    set.options.resize(transformer_.runs.size());
    for (std::size_t r = 0; r < transformer_.runs.size(); ++r)
        if (!add_options(set, r)) return;
    for (const Supplied supplied : cases())
        if (!tabulate_case(set, supplied)) return;
    weigh(set);
    models_.push_back(std::move(set));
    State root;
    root.model = static_cast<int>(models_.size()) - 1;
    root.cost = entry.price;
    if (find_bound(root)) open_.push(root);
}

double TransformerSearch::share(std::size_t run, const RunOption& option, double sag,
                                Supplied supplied) const {
    return powers_[supplied][run][at(option.label)].at(option.tap * sag) / sag;
}

/// The sum of the runs' shares at a sag, of those not chosen yet the least there is in its cell of the grid.
double TransformerSearch::least_sum(const ModelOptions& set, const std::vector<int>& chosen, double sag,
                                    Supplied supplied) const {
    const CaseTables& tables = set.tables[supplied];
    const std::size_t cell = cell_of(tables, ratio(set, supplied), sag);
    double sum = 0;
    for (std::size_t r = 0; r < set.options.size(); ++r)
        sum += r < chosen.size() ? share(r, set.options[r][at(chosen[r])], sag, supplied)
                                 : tables.least_share[r][cell];
    return sum;
}

/// Greatest sag a completion of the chosen options can have; anything below the least that counts where there
/// is none above it. It is the greatest at which `surplus`, the sag less what the shares leave of it, is not
/// above zero. Where currents fall with the volts, fixed-point steps come down onto it and never pass it.
/// Where they rise, a step may pass it: it then lies between two steps, and is found by halving.
double TransformerSearch::highest_sag(const ModelOptions& set, const std::vector<int>& chosen,
                                      Supplied supplied) const {
    const Model& model = transformer_.models[at(set.model)];
    const double top = ratio(set, supplied);
    const double pull = model.type->regulation / model.type->va.value();
    if (pull <= 0) { // without regulation the sag tells nothing of the load
        if (supplied == Supplied::weak) return top;
        const double va = top * least_sum(set, chosen, top, supplied);
        return va > (problem_.options.loading + loading_slack) * model.type->va.value() ? 0 : top;
    }
    const auto surplus = [&](double sag) { return sag - top + pull * least_sum(set, chosen, sag, supplied); };
    const double floor = set.tables[supplied].least_sag - 2 * loading_sag_slack;
    double above = top; // nothing above it has no surplus
    double over = surplus(above);
    for (int step = 0; step < sag_steps && over > sag_rounding; ++step) {
        const double below = std::max(above - over, floor);
        const double under = surplus(below);
        if (under <= 0) return greatest_between(surplus, below, above);
        if (below <= floor) return below - loading_sag_slack;
        above = below;
        over = under;
    }
    return above;
}

/// Least sag of a complete choice, on the greatest currents its labels may have.
double TransformerSearch::lowest_sag(const ModelOptions& set, const std::vector<int>& chosen) const {
    const Model& model = transformer_.models[at(set.model)];
    const double pull = model.type->regulation / model.type->va.value();
    double sag = model.supply_ratio;
    for (int step = 0; step < sag_steps; ++step) {
        double sum = 0;
        for (std::size_t r = 0; r < set.options.size(); ++r) {
            const RunOption& option = set.options[r][at(chosen[r])];
            const double amps = sample(runs_[r].labels[at(option.label)].most, option.tap * sag);
            sum += option.tap * std::min(amps, most_amps_[r]);
        }
        const double next = model.supply_ratio - pull * sum;
        if (std::abs(next - sag) < 1e-13) return next;
        sag = next;
    }
    return 0;
}

/// Least volt-amperes an option draws at any sag from the loading limit's up to this one: falling currents
/// draw least at the upper end, rising ones at the lower.
double TransformerSearch::least_va(const ModelOptions& set, std::size_t run, const RunOption& option,
                                   double sag) const {
    const double least = set.tables[Supplied::nominal].least_sag;
    return std::min(sag * share(run, option, sag), least * share(run, option, least));
}

/// Chooses trial prices around what the options of the runs pay for a volt-ampere less, and tabulates them.
void TransformerSearch::weigh(ModelOptions& set) const {
    constexpr int lowest = -9;
    constexpr int highest = 4;
    const CaseTables& tables = set.tables[Supplied::nominal];
    const double top = ratio(set);
    double scale = 0;
    for (std::size_t r = 0; r < set.options.size(); ++r) {
        const auto& options = set.options[r];
        const double costs = options.back().cost - options.front().cost;
        const double va =
            std::abs(least_va(set, r, options.front(), top) - least_va(set, r, options.back(), top));
        if (va > 1e-9) scale = std::max(scale, costs / va);
    }
    if (scale <= 0) return;
    for (int power = lowest; power <= highest; ++power)
        set.va_prices.push_back(scale * std::pow(2.0, power));
    set.weighed.assign(
        set.va_prices.size(),
        std::vector<std::vector<double>>(set.options.size(), std::vector<double>(grid_points, infinity)));
    for (std::size_t r = 0; r < set.options.size(); ++r)
        for (const RunOption& option : set.options[r])
            for (std::size_t k = 0; k < grid_points; ++k) {
                const double right = grid_sag(tables, top, std::min(k + 1, grid_points - 1));
                if (option.low_sag[Supplied::nominal] > right + sag_slack) continue;
                const double va = least_va(set, r, option, right);
                for (std::size_t m = 0; m < set.va_prices.size(); ++m) {
                    double& least = set.weighed[m][r][k];
                    least = std::min(least, option.cost + set.va_prices[m] * va);
                }
            }
}

/// The Lagrangian bound on the cost of a state's completions.
double TransformerSearch::weighed_bound(const State& state, const std::vector<int>& chosen) const {
    const ModelOptions& set = models_[at(state.model)];
    const Model& model = transformer_.models[at(set.model)];
    const double allowed = (problem_.options.loading + loading_slack) * model.type->va.value();
    const double sag = state.sag[Supplied::nominal];
    const std::size_t cell = cell_of(set.tables[Supplied::nominal], ratio(set), sag);
    double decided_va = 0;
    for (std::size_t r = 0; r < chosen.size(); ++r)
        decided_va += least_va(set, r, set.options[r][at(chosen[r])], sag);
    double best = 0;
    for (std::size_t m = 0; m < set.va_prices.size(); ++m) {
        double bound = state.cost + set.va_prices[m] * (decided_va - allowed);
        for (std::size_t r = chosen.size(); r < set.options.size(); ++r)
            bound += set.weighed[m][r][cell];
        best = std::max(best, bound);
    }
    return best;
}

/// Sets the sags and the bound of a state. False when nothing completes it.
bool TransformerSearch::find_bound(State& state) const {
    const ModelOptions& set = models_[at(state.model)];
    const std::vector<int> chosen = chosen_by(state);
    for (const Supplied supplied : cases()) {
        state.sag[supplied] = highest_sag(set, chosen, supplied);
        if (state.sag[supplied] < set.tables[supplied].least_sag - loading_sag_slack) return false;
    }
    for (std::size_t r = 0; r < chosen.size(); ++r)
        if (!allows(state.sag, set.options[r][at(chosen[r])])) return false;
    state.bound = state.cost;
    for (std::size_t r = chosen.size(); r < set.options.size(); ++r)
        state.bound += least_cost(set, r, state.sag);
    state.bound = std::max(state.bound, weighed_bound(state, chosen) - weighing_slack);
    return state.bound < infinity;
}

std::vector<int> TransformerSearch::chosen_by(const State& state) const {
    std::vector<int> chosen;
    if (state.depth < 0) return chosen;
    chosen.push_back(state.option);
    for (int step = state.parent; step >= 0; step = trail_[at(step)].parent)
        chosen.push_back(trail_[at(step)].option);
    std::reverse(chosen.begin(), chosen.end());
    return chosen;
}

/// Pushes a family, led by its first option that its parent's sag allows.
void TransformerSearch::push_family(State family) {
    const auto& options = models_[at(family.model)].options[at(family.depth)];
    while (at(family.option) < options.size() && !allows(family.sag, options[at(family.option)]))
        ++family.option;
    if (at(family.option) >= options.size()) return;
    family.family = true;
    family.bound = family.cost + options[at(family.option)].cost + family.rest;
    open_.push(family);
}

/// Pushes the leading option of a family as a state of its own.
void TransformerSearch::push_member(const State& family) {
    State member = family;
    member.family = false;
    member.cost += models_[at(family.model)].options[at(family.depth)][at(family.option)].cost;
    effort_.spend(4 * models_[at(family.model)].options.size());
    if (!find_bound(member)) return;
    member.bound = std::max(member.bound, family.bound);
    open_.push(member);
}

/// Pushes the family of all options of the next run.
void TransformerSearch::push_children(const State& state) {
    const ModelOptions& set = models_[at(state.model)];
    State family;
    family.model = state.model;
    family.depth = state.depth + 1;
    family.cost = state.cost;
    family.sag = state.sag;
    if (state.depth >= 0) {
        family.parent = static_cast<int>(trail_.size());
        trail_.push_back({state.option, state.parent});
    }
    for (std::size_t r = at(family.depth) + 1; r < set.options.size(); ++r)
        family.rest += least_cost(set, r, state.sag);
    push_family(family);
}

bool TransformerSearch::holds(const ModelOptions& set, const std::vector<int>& chosen) const {
    bool limited = false;
    for (std::size_t r = 0; r < chosen.size(); ++r)
        limited = limited || set.options[r][at(chosen[r])].high_sag < infinity;
    if (!limited) return true; // low sags were checked by the bound
    const double sag = lowest_sag(set, chosen);
    for (std::size_t r = 0; r < chosen.size(); ++r)
        if (set.options[r][at(chosen[r])].high_sag < sag - sag_slack) return false;
    return true;
}

Candidate TransformerSearch::candidate(const Combination& combination) const {
    bool exact = true;
    for (std::size_t r = 0; r < combination.options.size(); ++r)
        exact = exact && label(combination, r).exact;
    return {proposal(combination), combination.cost, exact};
}

std::optional<Candidate> TransformerSearch::next() {
    const auto found = next_combination();
    if (!found) return std::nullopt;
    return candidate(*found);
}

std::optional<Combination> TransformerSearch::next_combination() {
    while (!open_.empty() && !effort_.spent()) {
        const State state = open_.top();
        open_.pop();
        const ModelOptions& set = models_[at(state.model)];
        if (state.family) {
            push_member(state);
            State later = state;
            ++later.option;
            push_family(later);
            continue;
        }
        if (at(state.depth + 1) < set.options.size()) {
            push_children(state);
            continue;
        }
        Combination found{state.model, state.cost, chosen_by(state)};
        if (holds(set, found.options)) return found;
    }
    return std::nullopt;
}

double TransformerSearch::bound() const { return open_.empty() ? infinity : open_.top().bound; }

const Label& TransformerSearch::label(const Combination& combination, std::size_t run) const {
    const RunOption& option = models_[at(combination.model)].options[run][at(combination.options[run])];
    return runs_[run].labels[at(option.label)];
}

Proposal TransformerSearch::proposal(const Combination& combination) const {
    const ModelOptions& set = models_[at(combination.model)];
    Proposal proposal;
    proposal.model = set.model;
    for (std::size_t r = 0; r < combination.options.size(); ++r) {
        const RunOption& option = set.options[r][at(combination.options[r])];
        proposal.taps.push_back(option.tap);
        proposal.cables.push_back(
            runs_[r].cables_of(transformer_.runs[r], runs_[r].labels[at(option.label)]));
    }
    return proposal;
}

} // namespace rillwatt::search
