#include "rillwatt/search/meshed_search.hpp"

#include <algorithm>

namespace rillwatt::search {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

} // namespace

bool MeshedSearch::Later::operator()(const State& a, const State& b) const {
    return a.cost != b.cost ? a.cost > b.cost : a.picks > b.picks;
}

MeshedSearch::MeshedSearch(const SizeProblem& problem, const TransformerProblem& transformer, Effort& effort)
    : problem_(problem), transformer_(transformer), effort_(effort) {
    add_items();
    State first;
    first.picks.assign(items_.size() + 1, 0);
    for (std::size_t place = 0; place < first.picks.size(); ++place) {
        if (alternatives(place) == 0) return; // nothing to choose from
        first.cost += pick_cost(place, 0);
    }
    open_.push(first);
}

void MeshedSearch::add_item(Item item, double metres, double longest) {
    for (const int cable : problem_.candidates)
        if (problem_.cables[at(cable)].holds(longest))
            item.alternatives.emplace_back(problem_.cables[at(cable)].price * metres, cable);
    std::stable_sort(item.alternatives.begin(), item.alternatives.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    items_.push_back(std::move(item));
}

void MeshedSearch::add_items() {
    for (std::size_t r = 0; r < transformer_.runs.size(); ++r) {
        const RunProblem& run = transformer_.runs[r];
        Item whole;
        for (std::size_t i = 0; i < run.nodes.size(); ++i) {
            if (run.nodes[i].typed >= 0) continue;
            if (problem_.options.per_length)
                add_item({{}, {{r, i}}, -1}, run.nodes[i].metres, run.nodes[i].metres);
            else
                whole.lengths.emplace_back(r, i);
        }
        if (!whole.lengths.empty()) add_item(std::move(whole), run.open_metres(), run.longest_open());
    }
    const TransformerCircuit& circuit = problem_.circuits->transformers[transformer_.circuit];
    for (std::size_t k = 0; k < transformer_.link_typed.size(); ++k)
        if (transformer_.link_typed[k] < 0) {
            const double metres = circuit.links[k].length->value();
            add_item({{}, {}, static_cast<int>(k)}, metres, metres);
        }
}

std::size_t MeshedSearch::alternatives(std::size_t place) const {
    return place == 0 ? transformer_.models.size() : items_[place - 1].alternatives.size();
}

double MeshedSearch::pick_cost(std::size_t place, int pick) const {
    return place == 0 ? transformer_.models[at(pick)].price : items_[place - 1].alternatives[at(pick)].first;
}

/// Each set of picks has one predecessor: itself with its last raised pick lowered by one.
void MeshedSearch::push_successors(const State& state) {
    for (std::size_t place = state.last; place < state.picks.size(); ++place) {
        if (at(state.picks[place]) + 1 >= alternatives(place)) continue;
        State raised = state;
        raised.cost += pick_cost(place, state.picks[place] + 1) - pick_cost(place, state.picks[place]);
        ++raised.picks[place];
        raised.last = place;
        open_.push(raised);
    }
}

Proposal MeshedSearch::base_proposal(const State& state) const {
    Proposal proposal;
    proposal.model = state.picks[0];
    proposal.link_cables = transformer_.link_typed;
    for (const RunProblem& run : transformer_.runs) {
        proposal.cables.emplace_back();
        for (const RunNode& node : run.nodes)
            proposal.cables.back().push_back(node.typed);
    }
    for (std::size_t k = 0; k < items_.size(); ++k) {
        const int cable = items_[k].alternatives[at(state.picks[k + 1])].second;
        if (items_[k].link >= 0) proposal.link_cables[at(items_[k].link)] = cable;
        for (const auto& [run, node] : items_[k].lengths)
            proposal.cables[run][node] = cable;
    }
    return proposal;
}

bool MeshedSearch::start_taps() {
    taps_.clear();
    for (const RunProblem& run : transformer_.runs) {
        taps_.push_back(taps_for(transformer_.models[at(current_->model)], run));
        if (taps_.back().empty()) return false;
        std::sort(taps_.back().rbegin(), taps_.back().rend());
    }
    tap_at_.assign(taps_.size(), 0);
    return taps_agree() || next_taps();
}

bool MeshedSearch::next_taps() {
    for (std::size_t r = 0; r < tap_at_.size();) {
        if (++tap_at_[r] == taps_[r].size()) {
            tap_at_[r++] = 0;
            continue;
        }
        if (taps_agree()) return true;
        r = 0;
    }
    return false;
}

/// Runs that a link joins are on one tap: between two of them the link would be a short circuit.
bool MeshedSearch::taps_agree() const {
    const TransformerCircuit& circuit = problem_.circuits->transformers[transformer_.circuit];
    const auto tap_of = [&](int node) {
        const int run = circuit.nodes[at(node)].run;
        for (std::size_t r = 0; r < transformer_.runs.size(); ++r)
            if (transformer_.runs[r].run == run) return taps_[r][tap_at_[r]];
        return 0.0;
    };
    return std::all_of(circuit.links.begin(), circuit.links.end(),
                       [&](const CircuitLink& link) { return tap_of(link.a) == tap_of(link.b); });
}

std::optional<Candidate> MeshedSearch::next() {
    bool fresh = false;
    while (!current_ || !next_taps()) {
        current_.reset();
        if (open_.empty() || effort_.spent()) return std::nullopt;
        const State state = open_.top();
        open_.pop();
        push_successors(state);
        effort_.spend(10);
        current_ = base_proposal(state);
        current_cost_ = state.cost;
        fresh = start_taps() && keeps_order(problem_, transformer_, *current_);
        if (fresh) break;
        current_.reset();
    }
    effort_.spend(30);
    for (std::size_t r = 0; r < taps_.size(); ++r) {
        if (fresh) current_->taps.push_back(0);
        current_->taps[r] = taps_[r][tap_at_[r]];
    }
    return Candidate{*current_, current_cost_, true};
}

double MeshedSearch::bound() const {
    if (current_) return current_cost_;
    return open_.empty() ? std::numeric_limits<double>::infinity() : open_.top().cost;
}

} // namespace rillwatt::search
