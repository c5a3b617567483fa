#include "rillwatt/search/transformer_search.hpp"

#include <algorithm>

namespace rillwatt::search {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

} // namespace

std::optional<Combination> TransformerSearch::quick_choice(int model) const {
    constexpr int rounds = 50;
    const ModelOptions& set = models_[at(model)];
    Combination choice{model, 0, std::vector<int>(set.options.size(), 0)};
    PerCase<double> sag{{ratio(set), ratio(set, Supplied::weak)}};
    for (int round = 0; round < rounds; ++round) {
        choice.cost = transformer_.models[at(set.model)].price;
        for (std::size_t r = 0; r < set.options.size(); ++r) {
            const auto& options = set.options[r];
            const auto fits = std::find_if(options.begin(), options.end(), [&](const RunOption& option) {
                return allows(sag, option, 0) && option.high_sag >= sag[Supplied::nominal];
            });
            if (fits == options.end()) return std::nullopt;
            choice.options[r] = static_cast<int>(fits - options.begin());
            choice.cost += fits->cost;
        }
        bool holds = true;
        for (const Supplied supplied : cases()) {
            const double reached = highest_sag(set, choice.options, supplied);
            const double least = set.tables[supplied].least_sag;
            holds = holds && reached >= sag[supplied] - sag_slack && reached >= least - loading_sag_slack;
            sag[supplied] = std::min(reached, sag[supplied] - sag_slack);
        }
        if (holds) return choice;
    }
    return std::nullopt;
}

std::vector<Candidate> TransformerSearch::quick_choices() const {
    std::vector<Candidate> choices;
    for (std::size_t m = 0; m < models_.size(); ++m)
        if (const auto choice = quick_choice(static_cast<int>(m))) choices.push_back(candidate(*choice));
    std::stable_sort(choices.begin(), choices.end(),
                     [](const Candidate& a, const Candidate& b) { return a.cost < b.cost; });
    return choices;
}

} // namespace rillwatt::search
