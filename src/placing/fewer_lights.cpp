// The local search: moves, removals and additions of single lights, judged by the shortfall they leave.
#include "fewer_lights.hpp"

#include <algorithm>
#include <numeric>

namespace rillwatt {
namespace {

constexpr int most_rounds = 40;
constexpr double least_gain = 1e-9;
constexpr double window = 1.25; ///< metres along the walk that one move goes at most

/// The mesh place where one lamp more leaves least missing; what stands in `taken` is passed over.
std::optional<std::size_t> best_place(const LightSum& sum, double from, double to, Effort& effort) {
    std::optional<std::size_t> best;
    double least = 0;
    const auto [first, last] = sum.table().between(from, to);
    for (std::size_t place = first; place < last; ++place) {
        if (std::find(sum.lamps().begin(), sum.lamps().end(), place) != sum.lamps().end()) continue;
        long work = 0;
        const double left = sum.shortfall_with(place, work);
        effort.points -= work;
        if (best && left >= least) continue;
        best = place;
        least = left;
    }
    return best;
}

/// Stretches of the walk, a metre each, from which light could be moved to where it is missing.
class DarkStretches {
  public:
    explicit DarkStretches(const LightSum& sum) {
        const LightTable& table = sum.table();
        const double per_point = table.places().length() / static_cast<double>(table.points());
        const double near = table.reach() + window;
        for (const std::uint32_t point : sum.dark_points()) {
            const double along = per_point * point; // points follow one another along the walk
            if (ranges_.empty() || along - near > ranges_.back().second)
                ranges_.emplace_back(along - near, along + near);
            else
                ranges_.back().second = along + near;
        }
    }

    bool holds(double along) const {
        return std::any_of(ranges_.begin(), ranges_.end(),
                           [&](const auto& range) { return along >= range.first && along <= range.second; });
    }

  private:
    std::vector<std::pair<double, double>> ranges_;
};

/// Moves one lamp, which then stands last; puts it back where no move helps. Whether it moved.
bool move_one(LightSum& sum, std::size_t position, Effort& effort) {
    const std::size_t lamp = sum.lamps()[position];
    const double before = sum.shortfall();
    const double along = sum.table()[lamp].slot.along;
    sum.remove(position);
    const std::optional<std::size_t> place = best_place(sum, along - window, along + window, effort);
    long work = 0;
    const bool better = place && sum.shortfall_with(*place, work) < before - least_gain;
    sum.add(better ? *place : lamp);
    return better;
}

bool move_each(LightSum& sum, Effort& effort) {
    const std::vector<std::size_t> lamps = sum.lamps();
    const bool everywhere = sum.mean() < sum.need().mean;
    const DarkStretches dark(sum);
    bool moved = false;
    for (const std::size_t lamp : lamps) {
        if (!everywhere && !dark.holds(sum.table()[lamp].slot.along)) continue;
        const auto at = std::find(sum.lamps().begin(), sum.lamps().end(), lamp);
        moved |= move_one(sum, static_cast<std::size_t>(at - sum.lamps().begin()), effort);
        if (effort.spent()) break;
    }
    return moved;
}

/// Positions of the lamps, those first that are missed least.
std::vector<std::size_t> least_missed(LightSum& sum, Effort& effort) {
    const std::vector<std::size_t> lamps = sum.lamps();
    std::vector<std::pair<double, std::size_t>> order;
    for (const std::size_t lamp : lamps) {
        sum.remove(0);
        order.emplace_back(sum.shortfall(), lamp);
        sum.add(lamp); // goes to the end: after all of them the order is the old one
        effort.points -= 2 * static_cast<long>(sum.table()[lamp].lux.size());
    }
    std::sort(order.begin(), order.end());
    std::vector<std::size_t> sorted;
    for (const auto& [missing, lamp] : order)
        sorted.push_back(lamp);
    return sorted;
}

} // namespace

bool move_until_met(LightSum& sum, Effort& effort) {
    for (int round = 0; round < most_rounds; ++round) {
        sum.set_measure();
        if (sum.met()) return true;
        effort.points -= static_cast<long>(sum.lux().size());
        if (effort.spent() || !move_each(sum, effort)) return false;
    }
    return sum.met();
}

void take_away(LightSum& sum, Effort& effort) {
    for (bool fewer = true; fewer && !sum.lamps().empty() && !effort.spent();) {
        fewer = false;
        const std::vector<std::size_t> before = sum.lamps();
        for (const std::size_t lamp : least_missed(sum, effort)) {
            std::vector<std::size_t> rest = before;
            rest.erase(std::find(rest.begin(), rest.end(), lamp));
            sum.put(rest);
            fewer = move_until_met(sum, effort);
            if (fewer || effort.spent()) break;
        }
        if (!fewer) sum.put(before);
    }
}

bool fill_dark_spots(LightSum& sum, std::size_t most, Effort& effort) {
    for (sum.set_measure(); !sum.met(); sum.set_measure()) {
        if (sum.lamps().size() >= most || effort.spent()) return false;
        const double length = sum.table().places().length();
        const auto darkest = std::min_element(sum.lux().begin(), sum.lux().end()) - sum.lux().begin();
        const double along = length * static_cast<double>(darkest) / static_cast<double>(sum.lux().size());
        const double near = sum.table().reach();
        const std::optional<std::size_t> place = best_place(sum, along - near, along + near, effort);
        if (!place) return false;
        sum.add(*place);
        effort.points -= static_cast<long>(sum.lux().size());
    }
    return true;
}

} // namespace rillwatt
