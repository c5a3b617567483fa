#include "rillwatt/light/light_scene.hpp"

#include "rillwatt/layout/places.hpp"

#include <algorithm>
#include <utility>

namespace rillwatt {
namespace {

constexpr double light_per_volt_exponent = 3.4; ///< Standard Handbook for Electrical Engineers: 3.4 to 3.5

template<class Part>
const Part* part_with(const std::vector<Part>& parts, const std::string& id) {
    const auto it = std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return part.id == id; });
    return it == parts.end() ? nullptr : &*it;
}

/// What a part that feeds others is fed from; empty at a transformer or where the chain is open.
std::string feed_of(const Site& site, const std::string& id) {
    if (const Fixture* fixture = part_with(site.fixtures, id)) return fixture->from.value_or("");
    if (const Splice* splice = part_with(site.splices, id)) return splice->from;
    if (const Run* run = part_with(site.runs, id)) return run->from;
    return {};
}

/// Follows the feed up to the transformer. Parts that feed each other end the search.
const Transformer* feeding_transformer(const Site& site, const Fixture& fixture) {
    std::string at = fixture.from.value_or("");
    const std::size_t parts = site.fixtures.size() + site.splices.size() + site.runs.size();
    for (std::size_t step = 0; step <= parts && !at.empty(); ++step) {
        if (const Transformer* transformer = part_with(site.transformers, at)) return transformer;
        at = feed_of(site, at);
    }
    return nullptr;
}

bool without_operating_point(const Site& site, const CaseResult& result, std::size_t fixture) {
    if (result.unsolved.empty()) return false;
    const Transformer* feeding = feeding_transformer(site, site.fixtures[fixture]);
    return std::any_of(result.unsolved.begin(), result.unsolved.end(), [&](const NoOperatingPoint& failure) {
        return &site.transformers[failure.transformer] == feeding;
    });
}

/// Planting and paving that a light stands in lets it out; a building does not.
std::vector<std::size_t> areas_that_let_out(const Site& site, PlanPoint at) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < site.areas.size(); ++i) {
        const Area& area = site.areas[i];
        if (area.height.value() > 0 && area.kind != AreaKind::building && covers(area, at))
            found.push_back(i);
    }
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
    if (solution == nullptr || solution->cases.empty()) return {};
    const CaseResult& nominal = solution->nominal();
    for (const LampResult& lamp : nominal.lamps)
        if (lamp.fixture == fixture) return lamp.volts;
    if (without_operating_point(site, nominal, fixture)) return Volts(0);
    return {};
}

std::optional<PlacedLight> place_light(const Site& site, const Fixture& fixture, const FixtureType& type,
                                       std::shared_ptr<const TypePhotometry> photometry,
                                       double lumens_factor) {
    if (!fixture.at || !photometry) return {};
    const bool wet = in_water(site, fixture);
    const Area* water = wet ? water_at(site, *fixture.at) : nullptr;
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
    light.own_areas = areas_that_let_out(site, *fixture.at);
    return light;
}

LightScene build_light_scene(const Site& site, const Catalog& catalog, const SiteSolution* solution,
                             const Photometry& photometry) {
    LightScene scene;
    scene.obstacles = Obstacles(site);
    for (std::size_t i = 0; i < site.fixtures.size(); ++i) {
        const Fixture& fixture = site.fixtures[i];
        const FixtureType* type = find_entry(catalog.fixtures, fixture.model);
        const auto found = photometry.types.find(fixture.model);
        if (type == nullptr || found == photometry.types.end()) continue;
        const double lumens = lumen_factor(*type, nominal_volts(site, solution, i));
        std::optional<PlacedLight> light = place_light(site, fixture, *type, found->second, lumens);
        if (!light) continue;
        light->fixture = i;
        scene.lights.push_back(std::move(*light));
    }
    return scene;
}

} // namespace rillwatt
