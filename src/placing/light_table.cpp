#include "light_table.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

constexpr double negligible_share = 1e-4; ///< of what the darkest spot needs
constexpr double farthest = 60;           ///< metres
constexpr double nearest = 0.25;
constexpr double ring = 1.05; ///< each ring of the measuring is this much wider than the one before
constexpr int spokes = 24;
constexpr double set_back_weight = 0.5; ///< metres along that a metre off the edge is worth
constexpr double other_side = 0.5;      ///< metres along that changing the side is worth

/// Greatest lux on a ring round the foot of a light, on the ground that it stands on.
double greatest_on_ring(const PlacedLight& light, double ground, double radius) {
    double greatest = 0;
    for (int i = 0; i < spokes; ++i) {
        const double turn = 2 * pi * i / spokes;
        const SpacePoint point{light.pose.at.x + radius * std::cos(turn),
                               light.pose.at.y + radius * std::sin(turn), ground};
        greatest = std::max(greatest, unblocked_lux(light, point, straight_up));
    }
    return greatest;
}

} // namespace

LightTable::LightTable(const Workbench& bench, const PlacesBeside& places, const WalkGround& ground,
                       const Fixture& model, const WalkNeed& need)
    : bench_(bench), places_(places), ground_(ground), model_(model) {
    measure_reach(negligible_share * std::max(need.dark(need.mean), 1e-3));
    for (const WalkSlot& slot : places.mesh())
        if (!dazzles(slot)) add(slot);
}

Fixture LightTable::fixture(std::size_t i) const {
    Fixture fixture = model_;
    fixture.at = lamps_[i].slot.at;
    return fixture;
}

bool LightTable::dazzles(const WalkSlot& slot) const {
    if (bench_.site().viewpoints.empty()) return false;
    Fixture fixture = model_;
    fixture.at = slot.at;
    return bench_.dazzles(bench_.light_of(fixture));
}

void LightTable::measure_reach(double negligible) {
    Fixture fixture = model_;
    fixture.at = PlanPoint{};
    const PlacedLight light = bench_.light_of(fixture);
    const double ground = places_.walk().elevation.value();
    reach_ = nearest;
    for (double radius = farthest; radius > nearest; radius /= ring) {
        const double lux = greatest_on_ring(light, ground, radius);
        if (lux > negligible) {
            reach_ = std::min(farthest, radius * ring);
            return;
        }
        beyond_ = std::max(beyond_, lux);
    }
}

void LightTable::add(const WalkSlot& slot) {
    Lamp lamp;
    lamp.slot = slot;
    Fixture fixture = model_;
    fixture.at = slot.at;
    const std::vector<std::uint32_t> near = ground_.tree.within(slot.at, reach_);
    LitPoints lit;
    lit.points.reserve(near.size());
    for (const std::uint32_t point : near)
        lit.points.push_back(ground_.points[point]);
    add_light(bench_.light_of(fixture), bench_.scene().obstacles, lit);
    for (std::size_t i = 0; i < near.size(); ++i) {
        if (lit.lux[i] <= 0) continue;
        lamp.lux.push_back({near[i], static_cast<float>(lit.lux[i])});
        lamp.sum += lit.lux[i];
    }
    lamps_.push_back(std::move(lamp));
}

std::pair<std::size_t, std::size_t> LightTable::between(double from, double to) const {
    const auto first =
        std::lower_bound(lamps_.begin(), lamps_.end(), from,
                         [](const Lamp& lamp, double along) { return lamp.slot.along < along; });
    const auto last = std::upper_bound(
        first, lamps_.end(), to, [](double along, const Lamp& lamp) { return along < lamp.slot.along; });
    return {static_cast<std::size_t>(first - lamps_.begin()),
            static_cast<std::size_t>(last - lamps_.begin())};
}

std::optional<std::size_t> LightTable::near(const WalkSlot& wanted, double slide) const {
    const double reach = std::max(slide, places_.step() / 2 + 1e-9);
    const auto [first, last] = between(wanted.along - reach, wanted.along + reach);
    std::optional<std::size_t> best;
    double least = 0;
    for (std::size_t i = first; i < last; ++i) {
        const WalkSlot& slot = lamps_[i].slot;
        const double far = std::abs(slot.along - wanted.along) +
                           set_back_weight * std::abs(slot.back - wanted.back) +
                           (slot.side == wanted.side ? 0 : other_side);
        if (best && far >= least) continue;
        best = i;
        least = far;
    }
    return best;
}

} // namespace rillwatt
