#include "lower_bound.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace rillwatt {
namespace {

constexpr double weight_step = 0.25;
constexpr double rounding = 1e-6;
constexpr int rounds_per_light = 8;      ///< without a better bound, then the search for weights ends
constexpr double worth_going_on = 1e-4;  ///< share by which a bound has to be better
constexpr double worn_out = 1e-7;        ///< share of the first weights below which rounding would tell
constexpr double still_the_same = 1e-12; ///< share by which rounding may change a gain

double total_of(const std::vector<double>& lux) { return std::accumulate(lux.begin(), lux.end(), 0.0); }

/// The fractional covering problem: what each point still needs, and what each lamp gives of it.
class Covering {
  public:
    Covering(const LightTable& table, const std::vector<double>& base, double dark);

    /// A lower bound on the number of lamps; the search for weights stops as soon as it reaches `enough`.
    double bound(double enough, Effort& effort);

  private:
    struct Gain {
        double gain;
        std::uint32_t lamp;

        bool operator<(const Gain& other) const { return gain < other.gain; }
    };

    double share(std::size_t point, double lux) const;
    double gain(std::size_t lamp) const;
    Gain most_gainful(Effort& effort);
    void weigh_less(std::size_t lamp);

    const LightTable& table_;
    std::vector<double> need_;   ///< of each point, lux
    std::vector<double> weight_; ///< of each point
    double weights_ = 0;         ///< of all points
    double beyond_ = 0;          ///< what any lamp gains out of its reach, at most
    std::vector<Gain> gains_;    ///< a heap, the greatest first; weights only fall, so each is an upper bound
};

Covering::Covering(const LightTable& table, const std::vector<double>& base, double dark) : table_(table) {
    for (const double lux : base) {
        need_.push_back(std::max(0.0, dark - lux));
        weight_.push_back(need_.back() > 0 ? 1 : 0);
    }
    weights_ = total_of(weight_);
    for (std::size_t point = 0; point < need_.size(); ++point)
        beyond_ += weight_[point] * share(point, table.beyond_reach());
    for (std::uint32_t lamp = 0; lamp < table.size(); ++lamp)
        gains_.push_back({gain(lamp), lamp});
    std::make_heap(gains_.begin(), gains_.end());
}

/// Of what a point needs, at most all of it.
double Covering::share(std::size_t point, double lux) const {
    return need_[point] > 0 ? std::min(1.0, lux / need_[point]) : 0;
}

double Covering::gain(std::size_t lamp) const {
    double sum = beyond_;
    for (const LuxAt& at : table_[lamp].lux)
        sum += weight_[at.point] * share(at.point, static_cast<double>(at.lux));
    return sum;
}

/// The greatest gain of all: those on top are reckoned anew until one stays there.
Covering::Gain Covering::most_gainful(Effort& effort) {
    for (;;) {
        std::pop_heap(gains_.begin(), gains_.end());
        Gain& top = gains_.back();
        const double before = top.gain;
        top.gain = gain(top.lamp);
        effort.points -= static_cast<long>(table_[top.lamp].lux.size());
        const Gain answer = top;
        std::push_heap(gains_.begin(), gains_.end());
        if (answer.gain >= before * (1 - still_the_same)) return {before, answer.lamp};
    }
}

void Covering::weigh_less(std::size_t lamp) {
    for (const LuxAt& at : table_[lamp].lux) {
        double& weight = weight_[at.point];
        const double less = weight * weight_step * share(at.point, static_cast<double>(at.lux));
        weight -= less;
        weights_ -= less;
    }
}

double Covering::bound(double enough, Effort& effort) {
    if (weights_ <= 0 || gains_.empty()) return 0;
    double best = 0;
    const double worn = weights_ * worn_out;
    const auto patience = static_cast<long>(rounds_per_light * std::ceil(enough));
    for (long idle = 0; idle < patience && best < enough && weights_ > worn && !effort.spent(); ++idle) {
        const Gain most = most_gainful(effort);
        const double bound = weights_ / most.gain;
        if (bound > best * (1 + worth_going_on)) idle = 0;
        best = std::max(best, bound);
        weigh_less(most.lamp);
    }
    return best;
}

} // namespace

SumRange sum_range(const LightTable& table) {
    const double beyond = table.beyond_reach() * static_cast<double>(table.points());
    SumRange range;
    for (std::size_t i = 0; i < table.size(); ++i) {
        range.least = i == 0 ? table[i].sum : std::min(range.least, table[i].sum);
        range.greatest = std::max(range.greatest, table[i].sum + beyond);
    }
    return range;
}

double dark_with(const LightTable& table, const WalkNeed& need, double total, double more) {
    const double mean = (total + more) / static_cast<double>(table.points());
    return need.dark(std::max(need.mean, mean));
}

std::size_t lights_for_mean(const LightTable& table, const WalkNeed& need, const std::vector<double>& base) {
    const double missing = need.mean * static_cast<double>(base.size()) - total_of(base);
    const double most = sum_range(table).greatest;
    if (most <= 0) return table.size() + 1;
    return std::max<std::size_t>(
        1, static_cast<std::size_t>(std::ceil(std::max(0.0, missing) / most - rounding)));
}

std::size_t fewest_possible(const LightTable& table, const WalkNeed& need, const std::vector<double>& base,
                            std::size_t most, Effort& effort) {
    const double total = total_of(base);
    const double least = sum_range(table).least;
    std::size_t lights = lights_for_mean(table, need, base);
    double before = -1;
    while (lights < most && !effort.spent()) {
        const double dark = dark_with(table, need, total, static_cast<double>(lights) * least);
        if (dark <= before) break; // that many lights make the mean no brighter than what was asked before
        before = dark;
        Covering covering(table, base, dark);
        const double bound = covering.bound(static_cast<double>(most), effort);
        lights = std::max(lights, static_cast<std::size_t>(std::ceil(bound - rounding)));
    }
    return std::min(lights, most);
}

} // namespace rillwatt
