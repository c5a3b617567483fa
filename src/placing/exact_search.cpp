#include "exact_search.hpp"

#include "lower_bound.hpp"
#include <algorithm>
#include <numeric>

namespace rillwatt {
namespace {

constexpr double rounding = 1e-7; ///< share of what is needed

class ExactSearch {
  public:
    ExactSearch(const LightTable& table, const WalkNeed& need, const std::vector<double>& base,
                Effort& effort)
        : table_(table), need_(need), effort_(effort), lux_(base),
          total_(std::accumulate(base.begin(), base.end(), 0.0)), range_(sum_range(table)),
          reaching_(base.size()), banned_(table.size(), false) {
        for (std::size_t lamp = 0; lamp < table.size(); ++lamp)
            for (const LuxAt& at : table[lamp].lux)
                reaching_[at.point].push_back(static_cast<std::uint32_t>(lamp));
    }

    bool find(std::size_t left);
    const std::vector<std::size_t>& chosen() const { return chosen_; }

  private:
    struct Choice {
        double gain;
        std::size_t lamp;
    };

    bool met() const;
    bool mean_in_reach(std::size_t left) const;
    double missing(double dark) const;
    double gain(std::size_t lamp, double dark) const;
    std::optional<std::size_t> pivot(double dark) const;
    std::vector<Choice> choices(std::optional<std::size_t> point, double dark);
    double greatest_gain(double dark);
    void set(std::size_t lamp, double sign);
    bool branch(const std::vector<Choice>& choices, double least_gain, std::size_t left);

    const LightTable& table_;
    WalkNeed need_;
    Effort& effort_;
    std::vector<double> lux_;
    double total_;
    SumRange range_;
    std::vector<std::vector<std::uint32_t>> reaching_; ///< lamps that reach each point
    std::vector<bool> banned_;                         ///< chosen, or tried before in a branch beside
    std::vector<std::size_t> chosen_;
};

bool ExactSearch::met() const {
    const double mean = total_ / static_cast<double>(lux_.size());
    const double least = *std::min_element(lux_.begin(), lux_.end());
    return mean >= need_.mean * (1 + rounding) && least >= need_.dark(mean) * (1 + rounding);
}

bool ExactSearch::mean_in_reach(std::size_t left) const {
    const double most = total_ + static_cast<double>(left) * range_.greatest;
    return most >= need_.mean * static_cast<double>(lux_.size());
}

double ExactSearch::missing(double dark) const {
    double sum = 0;
    for (const double lux : lux_)
        sum += std::max(0.0, dark - lux);
    return sum;
}

double ExactSearch::gain(std::size_t lamp, double dark) const {
    double sum = 0;
    for (const LuxAt& at : table_[lamp].lux) {
        const double lacks = dark - lux_[at.point];
        if (lacks > 0) sum += std::min(lacks, static_cast<double>(at.lux));
    }
    effort_.points -= static_cast<long>(table_[lamp].lux.size());
    return sum;
}

/// The unmet point that the fewest places reach.
std::optional<std::size_t> ExactSearch::pivot(double dark) const {
    std::optional<std::size_t> best;
    for (std::size_t point = 0; point < lux_.size(); ++point)
        if (lux_[point] < dark && (!best || reaching_[point].size() < reaching_[*best].size())) best = point;
    return best;
}

/// Lamps that may be chosen, the most useful first: those that reach the point, or all.
std::vector<ExactSearch::Choice> ExactSearch::choices(std::optional<std::size_t> point, double dark) {
    std::vector<std::uint32_t> all(point ? 0 : table_.size());
    std::iota(all.begin(), all.end(), 0U);
    std::vector<Choice> found;
    for (const std::uint32_t lamp : point ? reaching_[*point] : all)
        if (!banned_[lamp]) found.push_back({point ? gain(lamp, dark) : table_[lamp].sum, lamp});
    std::stable_sort(found.begin(), found.end(),
                     [](const Choice& a, const Choice& b) { return a.gain > b.gain; });
    return found;
}

double ExactSearch::greatest_gain(double dark) {
    double greatest = 0;
    for (std::size_t lamp = 0; lamp < table_.size(); ++lamp)
        if (!banned_[lamp]) greatest = std::max(greatest, gain(lamp, dark));
    return greatest;
}

void ExactSearch::set(std::size_t lamp, double sign) {
    for (const LuxAt& at : table_[lamp].lux)
        lux_[at.point] += sign * static_cast<double>(at.lux);
    total_ += sign * table_[lamp].sum;
}

/// Each choice in turn; one that was tried takes no part in the branches that follow.
bool ExactSearch::branch(const std::vector<Choice>& choices, double least_gain, std::size_t left) {
    std::size_t tried = 0;
    bool found = false;
    for (; tried < choices.size() && !found && !effort_.spent(); ++tried) {
        if (choices[tried].gain < least_gain) break;
        const std::size_t lamp = choices[tried].lamp;
        banned_[lamp] = true;
        chosen_.push_back(lamp);
        set(lamp, 1);
        found = find(left - 1);
        set(lamp, -1);
        if (!found) chosen_.pop_back();
    }
    for (std::size_t i = 0; i < tried; ++i)
        banned_[choices[i].lamp] = false;
    return found;
}

bool ExactSearch::find(std::size_t left) {
    if (left == 0) return met();
    if (effort_.spent() || !mean_in_reach(left)) return false;
    const double dark = dark_with(table_, need_, total_, static_cast<double>(left) * range_.least);
    const double needed = missing(dark) * (1 - rounding);
    effort_.points -= static_cast<long>(lux_.size());
    const std::optional<std::size_t> point = pivot(dark);
    if (!point) return branch(choices(point, dark), 0, left);
    const double others = left > 1 ? static_cast<double>(left - 1) * greatest_gain(dark) : 0;
    return branch(choices(point, dark), needed - others, left);
}

} // namespace

Exhaustive search_all(const LightTable& table, const WalkNeed& need, const std::vector<double>& base,
                      std::size_t count, Effort& effort, std::vector<std::size_t>& lamps) {
    ExactSearch search(table, need, base, effort);
    if (search.find(count)) {
        lamps = search.chosen();
        return Exhaustive::found;
    }
    return effort.spent() ? Exhaustive::given_up : Exhaustive::impossible;
}

} // namespace rillwatt
