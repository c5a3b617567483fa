#include "rillwatt/layout/site_lengths.hpp"

#include "no_way_through.hpp"
#include "shortest_trench.hpp"
#include <string_view>
#include <unordered_map>

namespace rillwatt {
namespace {

using Places = std::unordered_map<std::string_view, PlanPoint>;

/// Where each part that can feed another stands, as far as it is known. A run starts where its transformer
/// stands.
Places feed_places(const Site& site) {
    Places places;
    Places transformers;
    for (const Transformer& transformer : site.transformers)
        if (transformer.at) transformers[transformer.id] = *transformer.at;
    for (const Run& run : site.runs)
        if (const auto it = transformers.find(run.from); it != transformers.end())
            places[run.id] = it->second;
    for (const Splice& splice : site.splices)
        if (splice.at) places[splice.id] = *splice.at;
    for (const Fixture& fixture : site.fixtures)
        if (fixture.at) places[fixture.id] = *fixture.at;
    return places;
}

/// Paving and buildings that a route passes because an end lies in them.
std::vector<std::string> crossed_areas(const Site& site, const ObstacleMap& map, const Trench& trench) {
    std::vector<std::string> crossed;
    for (const std::size_t i : trench.open) {
        const Obstacle& obstacle = map.obstacles()[i];
        if (obstacle.kind == AreaKind::water) continue;
        double inside = 0;
        for (const TrenchLeg& leg : trench.legs)
            if (!leg.sleeve) inside += map.length_inside(leg.a, leg.b, i);
        if (inside > 0) crossed.push_back(site.areas[obstacle.area].id);
    }
    return crossed;
}

class Measurer {
  public:
    explicit Measurer(const Site& site) : site_(&site), places_(feed_places(site)), finder_(site) {}

    std::optional<PlanPoint> place(std::string_view id) const {
        const auto it = places_.find(id);
        return it == places_.end() ? std::nullopt : std::optional(it->second);
    }

    PartLength measure(std::optional<PlanPoint> from, std::optional<PlanPoint> to,
                       std::optional<Metres> typed) {
        PartLength out;
        if (from && to) out.straight = distance(*from, *to);
        if (typed) {
            out.origin = LengthOrigin::typed;
            out.length = typed;
        } else if (from && to) {
            route(*from, *to, out);
        }
        return out;
    }

  private:
    void route(PlanPoint from, PlanPoint to, PartLength& out) {
        const std::optional<Trench> trench = finder_.shortest(from, to);
        if (!trench) {
            const NoWay no_way = explain_no_way(*site_, finder_, from, to);
            out.blocked_by = no_way.blocked_by;
            out.sleeve_hint = no_way.sleeve_hint;
            return;
        }
        out.origin = LengthOrigin::plan;
        out.length = Metres(trench->length) * (1 + site_->settings.cable_allowance);
        out.route.push_back(from);
        for (const TrenchLeg& leg : trench->legs)
            out.route.push_back(leg.b);
        out.crossed = crossed_areas(*site_, finder_.map(), *trench);
    }

    const Site* site_;
    Places places_;
    TrenchFinder finder_;
};

} // namespace

SiteLengths measure_lengths(const Site& site) {
    Measurer measurer(site);
    SiteLengths lengths;
    lengths.fixtures.reserve(site.fixtures.size());
    for (const Splice& splice : site.splices)
        lengths.splices.push_back(measurer.measure(measurer.place(splice.from), splice.at, splice.length));
    for (const Fixture& fixture : site.fixtures)
        lengths.fixtures.push_back(measurer.measure(
            fixture.from ? measurer.place(*fixture.from) : std::nullopt, fixture.at, fixture.length));
    for (const Link& link : site.links)
        lengths.links.push_back(
            measurer.measure(measurer.place(link.a), measurer.place(link.b), link.length));
    return lengths;
}

} // namespace rillwatt
