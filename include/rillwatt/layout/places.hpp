#pragma once

#include "rillwatt/layout/outline_index.hpp"
#include "rillwatt/site/site.hpp"

#include <optional>

namespace rillwatt {

/// Whether a point lies inside an area's outline or on it.
bool covers(const Area& area, PlanPoint point);

/// The water area a point lies in (on the outline counts as inside), or null.
const Area* water_at(const Site& site, PlanPoint point);

/// Whether a fixture stands in water: as written, else by the plan, else not.
bool in_water(const Site& site, const Fixture& fixture);

/// Plan distance from a point to the nearest water outline; 0 inside. Empty when the site has no water area.
std::optional<Metres> distance_to_water(const Site& site, PlanPoint point);

/// The areas of a site, for whoever asks the questions above of many parts: what one costs does not grow with
/// the garden. It reads the site, which must outlive it.
class AreaIndex {
  public:
    explicit AreaIndex(const Site& site);

    /// Areas that cover a point, outline included, in file order: indexes into Site::areas.
    std::vector<std::size_t> covering(PlanPoint point) const { return areas_.covering(point); }

    /// Areas whose box meets another, in file order: indexes into Site::areas.
    std::vector<std::size_t> near(const PlanBox& box) const { return areas_.near(box); }

    Location locate(std::size_t area, PlanPoint point) const { return areas_.locate(area, point); }
    bool covers(std::size_t area, PlanPoint point) const { return locate(area, point) != Location::outside; }

    /// Whether the plan shows water.
    bool has_water() const { return has_water_; }

    const Area* water_at(PlanPoint point) const;
    bool in_water(const Fixture& fixture) const;
    std::optional<Metres> distance_to_water(PlanPoint point) const;

  private:
    const Site* site_;
    OutlineIndex areas_;
    bool has_water_ = false;
};

} // namespace rillwatt
