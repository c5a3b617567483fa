#pragma once

#include "light_table.hpp"

namespace rillwatt {

/// Lights of one table on a walk, added up; one more or one less costs only the points it reaches.
class LightSum {
  public:
    LightSum(const LightTable& table, const WalkNeed& need, const std::vector<double>& base);

    void add(std::size_t lamp);
    void remove(std::size_t position);               ///< in `lamps`
    void put(const std::vector<std::size_t>& lamps); ///< these instead of those before

    const std::vector<std::size_t>& lamps() const { return lamps_; }
    const std::vector<double>& lux() const { return lux_; }
    const LightTable& table() const { return table_; }
    const WalkNeed& need() const { return need_; }
    double mean() const { return total_ / static_cast<double>(lux_.size()); }

    /// Whether the walk has what it needs, with a hair to spare for rounding.
    bool met() const;

    /// Takes what the darkest spot needs at the present mean as the measure of `shortfall`.
    void set_measure();

    /// How much is missing: squares of what each point lacks of the measure, and of what the mean lacks;
    /// where the measure hangs on the mean, a brighter mean counts against itself.
    double shortfall() const { return shortfall_of(lacking_, total_); }

    /// Points that lack something of the measure.
    std::vector<std::uint32_t> dark_points() const;

    /// The shortfall with one lamp more. `work` counts the points that were looked at.
    double shortfall_with(std::size_t lamp, long& work) const;

  private:
    double lack(double lux) const;
    double mean_lack(double total) const;
    double shortfall_of(double lacking, double total) const;
    void change(std::size_t lamp, double sign);

    const LightTable& table_;
    WalkNeed need_;
    const std::vector<double>& base_;
    std::vector<double> lux_;
    double total_ = 0;
    double dark_ = 0;           ///< the measure
    double lacking_ = 0;        ///< sum over the points
    double measured_total_ = 0; ///< at which the measure was taken
    double slope_ = 0;          ///< of the shortfall over the total, by way of the measure
    std::vector<std::size_t> lamps_;
};

} // namespace rillwatt
