#include "rillwatt/layout/places.hpp"

#include <algorithm>
#include <limits>

namespace rillwatt {

bool covers(const Area& area, PlanPoint point) {
    return !area.outline.empty() && locate(area.outline, point) != Location::outside;
}

const Area* water_at(const Site& site, PlanPoint point) {
    for (const Area& area : site.areas)
        if (area.kind == AreaKind::water && covers(area, point)) return &area;
    return nullptr;
}

bool in_water(const Site& site, const Fixture& fixture) {
    if (fixture.in_water) return *fixture.in_water;
    return fixture.at && water_at(site, *fixture.at) != nullptr;
}

std::optional<Metres> distance_to_water(const Site& site, PlanPoint point) {
    std::optional<Metres> least;
    for (const Area& area : site.areas) {
        if (area.kind != AreaKind::water || area.outline.empty()) continue;
        const Metres away(covers(area, point) ? 0.0 : distance_to_outline(area.outline, point));
        if (!least || away < *least) least = away;
    }
    return least;
}

namespace {

std::vector<std::vector<PlanPoint>> outlines_of(const Site& site) {
    std::vector<std::vector<PlanPoint>> outlines;
    for (const Area& area : site.areas)
        outlines.push_back(area.outline);
    return outlines;
}

} // namespace

AreaIndex::AreaIndex(const Site& site)
    : site_(&site), areas_(outlines_of(site)),
      has_water_(std::any_of(site.areas.begin(), site.areas.end(), [](const Area& area) {
          return area.kind == AreaKind::water && !area.outline.empty();
      })) {}

const Area* AreaIndex::water_at(PlanPoint point) const {
    if (!has_water_) return nullptr;
    for (const std::size_t i : areas_.near(point))
        if (site_->areas[i].kind == AreaKind::water && covers(i, point)) return &site_->areas[i];
    return nullptr;
}

bool AreaIndex::in_water(const Fixture& fixture) const {
    if (fixture.in_water) return *fixture.in_water;
    return fixture.at && water_at(*fixture.at) != nullptr;
}

std::optional<Metres> AreaIndex::distance_to_water(PlanPoint point) const {
    if (!has_water_) return std::nullopt;
    if (water_at(point) != nullptr) return Metres(0);
    double least = std::numeric_limits<double>::infinity();
    auto nearer = [&](std::size_t k, double away) {
        const OutlineIndex::Side& side = areas_.sides()[k];
        if (away > least) return false;
        if (site_->areas[side.outline].kind == AreaKind::water)
            least = std::min(least, distance_to_segment(side.a, side.b, point));
        return true;
    };
    areas_.side_index().visit_from(point, nearer);
    return Metres(least);
}

} // namespace rillwatt
