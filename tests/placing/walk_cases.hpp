#pragma once

#include "rillwatt/light/walk_light.hpp"
#include "rillwatt/placing/propose_lights.hpp"

#include "light/gardens.hpp"
#include <cmath>

namespace rillwatt::test {

/// A straight walk along x with the only type on offer for it.
struct WalkCase {
    const char* name;
    DistributionSpec distribution;
    double lumens;
    double length;
    double width;
    const char* target;
};

inline FixtureType type_of(const WalkCase& c) {
    FixtureType type = light_type("lamp", FixtureKind::path, c.distribution, c.lumens);
    type.price = Money(50);
    type.rating = WaterRating::wet;
    return type;
}

inline Site site_of(const WalkCase& c) {
    Site site;
    site.settings.units = LengthUnit::metres;
    site.walks.push_back(walk_of("walk", {{0, 0}, {c.length, 0}}, c.width));
    site.walks[0].target = c.target;
    return site;
}

/// Places on both sides at the stations and set-backs that the proposal may use.
inline std::vector<PlanPoint> all_places(const WalkCase& c) {
    std::vector<PlanPoint> places;
    const double step = c.length <= 10 ? 0.125 : 0.25;
    const auto taped = [](double metres) { return std::round(metres / 0.02) * 0.02; };
    for (int k = 0; step * k <= c.length; ++k)
        for (const double back : {0.2, 0.35, 0.5, 0.7})
            for (const int side : {1, -1})
                places.push_back({taped(step * k), taped(side * (c.width / 2 + back))});
    return places;
}

/// Lux from one lamp at each of the places, on each point of the walk.
inline std::vector<std::vector<double>> lux_from(const std::vector<PlanPoint>& places, const WalkCase& c) {
    const Site site = site_of(c);
    const Catalog catalog = catalog_of({type_of(c)});
    const Photometry photometry = *prepare_photometry(catalog, {"lamp"}, {}).value;
    std::vector<std::vector<double>> lux;
    for (const PlanPoint at : places) {
        LitPoints lit;
        lit.points = walk_points(site.walks[0]);
        const Fixture fixture = light_at("L", "lamp", at.x, at.y);
        add_light(*place_light(site, fixture, catalog.fixtures.at("lamp"), photometry.types.at("lamp"), 1),
                  Obstacles{}, lit);
        lux.push_back(std::move(lit.lux));
    }
    return lux;
}

/// Whether a number of the places light the walk as it asks, found by trying every set of them.
class Enumeration {
  public:
    explicit Enumeration(const WalkCase& c)
        : lux_(lux_from(all_places(c), c)), need_(walk_target(site_of(c).walks[0])) {}

    bool any(std::size_t count) const { return any(count, 0, std::vector<double>(lux_[0].size(), 0)); }

    /// The smallest number that does; `most` where none below it does.
    std::size_t fewest(std::size_t most) const {
        std::size_t count = 1;
        while (count < most && !any(count))
            ++count;
        return count;
    }

  private:
    bool enough(const std::vector<double>& lux) const {
        const LuxSpread spread = spread_of(lux);
        return spread.mean >= need_.mean->value() && spread.least >= need_.minimum->value() &&
               spread.least >= 0.2 * spread.mean; // EN 13201-2:2015 table 3: what the P classes imply
    }

    bool any(std::size_t left, std::size_t first, const std::vector<double>& sum) const {
        if (left == 0) return enough(sum);
        for (std::size_t i = first; i + left <= lux_.size(); ++i) {
            std::vector<double> more = sum;
            for (std::size_t k = 0; k < more.size(); ++k)
                more[k] += lux_[i][k];
            if (any(left - 1, i + 1, more)) return true;
        }
        return false;
    }

    std::vector<std::vector<double>> lux_;
    WalkTarget need_;
};

/// Short walks, each with few enough lights to try all sets of fewer.
inline std::vector<WalkCase> short_walks() {
    const HatDistribution hat{Degrees(10), Degrees(75)};
    return {{"narrow", hat, 150, 3, 0.9, "P5"},
            {"hats", hat, 140, 4, 1.2, "P4"},
            {"wide", HatDistribution{Degrees(10), Degrees(80)}, 300, 3, 2.4, "P5"},
            {"even", BatwingDistribution{Degrees(72)}, 130, 4.5, 1.0, "P5"},
            {"bright", BatwingDistribution{Degrees(78)}, 105, 5, 1.2, "P3"},
            {"beam", BeamDistribution{Degrees(120)}, 200, 3, 1.0, "P4"}};
}

} // namespace rillwatt::test
