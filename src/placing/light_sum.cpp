#include "light_sum.hpp"

#include <algorithm>
#include <numeric>

namespace rillwatt {
namespace {

constexpr double hair = 1e-6; ///< share of what is needed, against rounding

} // namespace

LightSum::LightSum(const LightTable& table, const WalkNeed& need, const std::vector<double>& base)
    : table_(table), need_(need), base_(base) {
    put({});
}

void LightSum::put(const std::vector<std::size_t>& lamps) {
    lux_ = base_;
    total_ = std::accumulate(lux_.begin(), lux_.end(), 0.0);
    lamps_.clear();
    for (const std::size_t lamp : lamps)
        add(lamp);
    set_measure();
}

double LightSum::lack(double lux) const {
    const double missing = lux < dark_ ? (dark_ - lux) / dark_ : 0;
    return missing * missing;
}

double LightSum::mean_lack(double total) const {
    const double points = static_cast<double>(lux_.size());
    const double mean = total / points;
    const double missing = mean < need_.mean * (1 + hair) ? need_.mean * (1 + 2 * hair) - mean : 0;
    return missing > 0 ? points * missing * missing / (need_.mean * need_.mean) : 0;
}

void LightSum::change(std::size_t lamp, double sign) {
    for (const LuxAt& at : table_[lamp].lux) {
        double& lux = lux_[at.point];
        lacking_ -= lack(lux);
        lux += sign * static_cast<double>(at.lux);
        lacking_ += lack(lux);
    }
    total_ += sign * table_[lamp].sum;
}

void LightSum::add(std::size_t lamp) {
    change(lamp, 1);
    lamps_.push_back(lamp);
}

void LightSum::remove(std::size_t position) {
    change(lamps_[position], -1);
    lamps_.erase(lamps_.begin() + static_cast<std::ptrdiff_t>(position));
}

bool LightSum::met() const {
    const double least = *std::min_element(lux_.begin(), lux_.end());
    return mean() >= need_.mean * (1 + hair) && least >= need_.dark(mean()) * (1 + hair);
}

void LightSum::set_measure() {
    dark_ = need_.dark(mean()) * (1 + 2 * hair);
    lacking_ = 0;
    double steepness = 0; // of what is lacking over the measure
    for (const double lux : lux_) {
        lacking_ += lack(lux);
        if (lux < dark_) steepness += 2 * (dark_ - lux) * lux / (dark_ * dark_ * dark_);
    }
    measured_total_ = total_;
    const bool by_mean = need_.dark(mean()) > need_.least;
    slope_ = by_mean ? steepness * WalkNeed{}.dark(1) / static_cast<double>(lux_.size()) : 0;
}

double LightSum::shortfall_of(double lacking, double total) const {
    return std::max(0.0, lacking) + mean_lack(total) + slope_ * (total - measured_total_);
}

std::vector<std::uint32_t> LightSum::dark_points() const {
    std::vector<std::uint32_t> dark;
    for (std::size_t i = 0; i < lux_.size(); ++i)
        if (lux_[i] < dark_) dark.push_back(static_cast<std::uint32_t>(i));
    return dark;
}

double LightSum::shortfall_with(std::size_t lamp, long& work) const {
    double lacking = lacking_;
    for (const LuxAt& at : table_[lamp].lux) {
        const double lux = lux_[at.point];
        if (lux < dark_) lacking += lack(lux + static_cast<double>(at.lux)) - lack(lux);
    }
    work += static_cast<long>(table_[lamp].lux.size());
    return shortfall_of(lacking, total_ + table_[lamp].sum);
}

} // namespace rillwatt
