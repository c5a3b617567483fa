#pragma once

#include "places_beside.hpp"
#include "point_tree.hpp"
#include "walk_need.hpp"
#include <cstdint>
#include <utility>
#include <vector>

namespace rillwatt {

/// Lux that one light gives one point.
struct LuxAt {
    std::uint32_t point;
    float lux;
};

/// One light at one place beside a walk, and what it gives to the points of the walk within its reach.
struct Lamp {
    WalkSlot slot;
    std::vector<LuxAt> lux;
    double sum = 0; ///< of its lux
};

/// The points a walk is judged at.
struct WalkGround {
    explicit WalkGround(std::vector<SpacePoint> walk_points) : points(std::move(walk_points)), tree(points) {}
    WalkGround(const WalkGround&) = delete;
    WalkGround& operator=(const WalkGround&) = delete;

    std::vector<SpacePoint> points;
    PointTree tree;
};

/// What one type of light gives a walk from each place of the mesh, in order along the walk: computed once,
/// added up as often as needed.
class LightTable {
  public:
    LightTable(const Workbench& bench, const PlacesBeside& places, const WalkGround& ground,
               const Fixture& model, const WalkNeed& need);

    const Lamp& operator[](std::size_t i) const { return lamps_[i]; }
    std::size_t size() const { return lamps_.size(); }
    std::size_t points() const { return ground_.points.size(); }
    const PlacesBeside& places() const { return places_; }

    /// Lamps between two stations: first and one past the last.
    std::pair<std::size_t, std::size_t> between(double from, double to) const;

    /// The place nearest to the one wanted, up to `slide` metres along, rather on the same side.
    std::optional<std::size_t> near(const WalkSlot& wanted, double slide) const;

    /// The light there, as it would stand in the site file.
    Fixture fixture(std::size_t i) const;

    double reach() const { return reach_; }         ///< metres beyond which it gives next to nothing
    double beyond_reach() const { return beyond_; } ///< lux that it gives there, at most

  private:
    bool dazzles(const WalkSlot& slot) const;
    void measure_reach(double negligible);
    void add(const WalkSlot& slot);

    const Workbench& bench_;
    const PlacesBeside& places_;
    const WalkGround& ground_;
    Fixture model_;
    double reach_ = 0;
    double beyond_ = 0;
    std::vector<Lamp> lamps_;
};

} // namespace rillwatt
