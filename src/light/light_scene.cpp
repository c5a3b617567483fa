#include "rillwatt/light/light_scene.hpp"

#include "rillwatt/layout/places.hpp"

#include <algorithm>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <utility>

namespace rillwatt {
namespace {

constexpr double light_per_volt_exponent = 3.4; ///< Standard Handbook for Electrical Engineers: 3.4 to 3.5

/// What feeds what, for following a light up to its transformer.
class FeedChains {
  public:
    explicit FeedChains(const Site& site) {
        for (const Run& run : site.runs)
            feeds_[run.id] = run.from;
        for (const Splice& splice : site.splices)
            feeds_[splice.id] = splice.from;
        for (const Fixture& fixture : site.fixtures)
            if (fixture.from) feeds_[fixture.id] = *fixture.from;
    }

    /// Whether a light hangs on one of the parts named, at whatever remove. Parts that feed each other end
    /// the search.
    bool hangs_on(const Fixture& fixture, const std::unordered_set<std::string_view>& parts) const {
        std::string_view at = fixture.from ? std::string_view(*fixture.from) : std::string_view();
        for (std::size_t step = 0; step <= feeds_.size() && !at.empty(); ++step) {
            if (parts.count(at) > 0) return true;
            const auto feed = feeds_.find(at);
            at = feed == feeds_.end() ? std::string_view() : feed->second;
        }
        return false;
    }

  private:
    std::unordered_map<std::string_view, std::string_view> feeds_;
};

/// Sets the lights of circuits without an operating point, which have no volts yet, to 0 V.
void darken_unsolved(const Site& site, const CaseResult& result, std::vector<std::optional<Volts>>& volts) {
    if (result.unsolved.empty()) return;
    std::unordered_set<std::string_view> unsolved;
    for (const NoOperatingPoint& failure : result.unsolved)
        unsolved.insert(site.transformers[failure.transformer].id);
    const FeedChains chains(site);
    for (std::size_t i = 0; i < volts.size(); ++i)
        if (!volts[i] && chains.hangs_on(site.fixtures[i], unsolved)) volts[i] = Volts(0);
}

/// The volts of every light, by its number, as `nominal_volts` says them.
std::vector<std::optional<Volts>> all_nominal_volts(const Site& site, const SiteSolution* solution) {
    std::vector<std::optional<Volts>> volts(site.fixtures.size());
    if (solution == nullptr || solution->cases.empty()) return volts;
    const CaseResult& nominal = solution->nominal();
    for (const LampResult& lamp : nominal.lamps)
        if (!volts[lamp.fixture]) volts[lamp.fixture] = lamp.volts;
    darken_unsolved(site, nominal, volts);
    return volts;
}

/// A fixture that has a place, in the areas that cover it.
PlacedLight place_in(const Site& site, const Fixture& fixture, const FixtureType& type,
                     std::shared_ptr<const TypePhotometry> photometry, double lumens_factor,
                     const std::vector<std::size_t>& covered_by) {
    const auto is_water = [&](std::size_t i) { return site.areas[i].kind == AreaKind::water; };
    const auto first_water = std::find_if(covered_by.begin(), covered_by.end(), is_water);
    const bool wet = fixture.in_water.value_or(first_water != covered_by.end());
    const Area* water = wet && first_water != covered_by.end() ? &site.areas[*first_water] : nullptr;
    const std::optional<SpacePoint> centre = light_centre(fixture, type.kind, water);
    const double level = water != nullptr ? water->level.value() : 0;
    PlacedLight light;
    light.pose = fixture_pose(fixture, type.kind, *centre, photometry->distribution.type());
    const double tilt = light.pose.tilt();
    const double loss = wet ? site.settings.light_loss_factor_water : site.settings.light_loss_factor;
    light.lumen_factor = lumens_factor;
    light.factor = loss * lumens_factor * (tilt > 1e-6 ? photometry->tilt.factor(tilt) : 1);
    light.photometry = std::move(photometry);
    if (wet && centre->z < level) light.water_level = level;
    light.attenuation = site.settings.water_attenuation.value();
    // Planting and paving that a light stands in lets it out; a building does not.
    for (const std::size_t i : covered_by)
        if (site.areas[i].height.value() > 0 && site.areas[i].kind != AreaKind::building)
            light.own_areas.push_back(i);
    return light;
}

std::vector<std::size_t> areas_over(const Site& site, PlanPoint at) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < site.areas.size(); ++i)
        if (covers(site.areas[i], at)) found.push_back(i);
    return found;
}

} // namespace

double lumen_factor(const FixtureType& type, std::optional<Volts> volts) {
    if (!volts) return 1;
    if (type.load == LoadModel::filament || type.load == LoadModel::resistance)
        return std::pow(std::max(0.0, *volts / type.rated_volts), light_per_volt_exponent);
    return *volts < type.window_low ? 0 : 1;
}

std::optional<Volts> nominal_volts(const Site& site, const SiteSolution* solution, std::size_t fixture) {
    return all_nominal_volts(site, solution)[fixture];
}

std::optional<PlacedLight> place_light(const Site& site, const Fixture& fixture, const FixtureType& type,
                                       std::shared_ptr<const TypePhotometry> photometry,
                                       double lumens_factor) {
    if (!fixture.at || !photometry) return {};
    return place_in(site, fixture, type, std::move(photometry), lumens_factor, areas_over(site, *fixture.at));
}

LightScene build_light_scene(const Site& site, const Catalog& catalog, const SiteSolution* solution,
                             const Photometry& photometry) {
    LightScene scene;
    scene.obstacles = Obstacles(site);
    const AreaIndex areas(site);
    const std::vector<std::optional<Volts>> volts = all_nominal_volts(site, solution);
    for (std::size_t i = 0; i < site.fixtures.size(); ++i) {
        const Fixture& fixture = site.fixtures[i];
        const FixtureType* type = find_entry(catalog.fixtures, fixture.model);
        const auto found = photometry.types.find(fixture.model);
        if (!fixture.at || type == nullptr || found == photometry.types.end()) continue;
        scene.lights.push_back(place_in(site, fixture, *type, found->second, lumen_factor(*type, volts[i]),
                                        areas.covering(*fixture.at)));
        scene.lights.back().fixture = i;
    }
    return scene;
}

} // namespace rillwatt
