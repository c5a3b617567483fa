#include "workbench.hpp"

#include "rillwatt/layout/places.hpp"
#include "rillwatt/light/views.hpp"
#include "rillwatt/limits/light_limits.hpp"
#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>

namespace rillwatt {
namespace {

constexpr double clear_of_walk = 0.1;   ///< metres between a light and the edge of any walk, at least
constexpr double clear_of_viewer = 1.0; ///< metres round where people sit or stand to look
constexpr double clear_of_light = 0.1;  ///< metres between two lights

template<class Parts>
void collect_ids(const Parts& parts, std::set<std::string>& ids) {
    for (const Part& part : parts)
        ids.insert(part.id);
}

std::set<std::string> ids_of(const Site& site) {
    std::set<std::string> ids;
    collect_ids(site.circuits, ids);
    collect_ids(site.pumps, ids);
    collect_ids(site.transformers, ids);
    collect_ids(site.runs, ids);
    collect_ids(site.splices, ids);
    collect_ids(site.fixtures, ids);
    collect_ids(site.links, ids);
    collect_ids(site.areas, ids);
    collect_ids(site.sleeves, ids);
    collect_ids(site.marks, ids);
    collect_ids(site.walks, ids);
    collect_ids(site.falls, ids);
    collect_ids(site.viewpoints, ids);
    return ids;
}

bool contains(const std::vector<FixtureKind>& kinds, FixtureKind kind) {
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

/// What can serve a purpose at all, and what is taken unless something else is asked for.
std::vector<FixtureKind> kinds_for(Purpose purpose, bool asked) {
    if (purpose == Purpose::falls) return {FixtureKind::submersible, FixtureKind::accent};
    if (!asked) return {FixtureKind::path};
    return {FixtureKind::path, FixtureKind::step, FixtureKind::downlight, FixtureKind::other};
}

bool steady(const FixtureType& type) {
    return type.load == LoadModel::constant_power || type.load == LoadModel::constant_current;
}

/// Not so cool that a check remarks on it.
bool warm(const FixtureType* type) {
    return !type->colour_temperature || !above(*type->colour_temperature, limits::warm_colour.value);
}

double distance_to_line(PlanPoint p, const std::vector<PlanPoint>& line) {
    double nearest = 1e300;
    for (std::size_t i = 1; i < line.size(); ++i) {
        const double dx = line[i].x - line[i - 1].x;
        const double dy = line[i].y - line[i - 1].y;
        const double squared = dx * dx + dy * dy;
        const double along = (p.x - line[i - 1].x) * dx + (p.y - line[i - 1].y) * dy;
        const double t = squared > 0 ? std::clamp(along / squared, 0.0, 1.0) : 0;
        nearest = std::min(nearest, std::hypot(p.x - line[i - 1].x - t * dx, p.y - line[i - 1].y - t * dy));
    }
    return nearest;
}

} // namespace

std::vector<std::string> types_on_offer(const Site& site, const Catalog& catalog,
                                        const PlacingOptions& options) {
    if (!options.models.empty()) return options.models;
    if (site.stock.fixtures) return *site.stock.fixtures;
    std::vector<std::string> types;
    for (const auto& [id, type] : catalog.fixtures)
        if (type.price) types.push_back(id);
    return types;
}

Workbench::Workbench(const Site& site, const Catalog& catalog, LightScene scene, Photometry photometry,
                     const PlacingOptions& options)
    : site_(site), catalog_(catalog), scene_(std::move(scene)), photometry_(std::move(photometry)),
      options_(options), ids_(ids_of(site)) {
    probe_.obstacles = scene_.obstacles;
}

bool Workbench::offered(const FixtureType& type, const std::vector<FixtureKind>& kinds) const {
    if (!contains(kinds, type.kind)) return false;
    if (!options_.kinds.empty() && !contains(options_.kinds, type.kind)) return false;
    if (options_.models.empty() && !steady(type)) return false; // a filament lamp's light hangs on its volts
    const auto found = photometry_.types.find(type.id);
    return found != photometry_.types.end() && !found->second->distribution.dark();
}

std::vector<const FixtureType*> Workbench::offer(Purpose purpose) const {
    const bool asked = !options_.models.empty() || !options_.kinds.empty();
    const std::vector<FixtureKind> kinds = kinds_for(purpose, asked);
    std::vector<const FixtureType*> types;
    for (const std::string& id : types_on_offer(site_, catalog_, options_)) {
        const FixtureType* type = find_entry(catalog_.fixtures, id);
        if (type != nullptr && offered(*type, kinds)) types.push_back(type);
    }
    if (options_.models.empty() && std::any_of(types.begin(), types.end(), warm))
        types.erase(std::stable_partition(types.begin(), types.end(), warm), types.end());
    std::stable_sort(types.begin(), types.end(), [](const FixtureType* a, const FixtureType* b) {
        return a->price.value_or(Money(1e9)) < b->price.value_or(Money(1e9));
    });
    return types;
}

PlacedLight Workbench::light_of(const Fixture& fixture) const {
    const FixtureType* type = find_entry(catalog_.fixtures, fixture.model);
    return *place_light(site_, fixture, *type, photometry_.types.find(fixture.model)->second, 1);
}

bool Workbench::free_ground(PlanPoint at, WaterRule water) const {
    for (const Area& area : site_.areas) {
        const bool taken =
            area.kind == AreaKind::water || area.kind == AreaKind::paving || area.kind == AreaKind::building;
        if (taken && covers(area, at)) return false;
    }
    for (const Walk& walk : site_.walks)
        if (distance_to_line(at, walk.line) < walk.width.value() / 2 + clear_of_walk) return false;
    if (water == WaterRule::keep_clear && near_water(at)) return false;
    return !someone_at(at) && !light_at(at);
}

bool Workbench::someone_at(PlanPoint at) const {
    return std::any_of(site_.viewpoints.begin(), site_.viewpoints.end(), [&](const Viewpoint& viewpoint) {
        return distance(viewpoint.at, at).value() < clear_of_viewer;
    });
}

bool Workbench::light_at(PlanPoint at) const {
    return std::any_of(scene_.lights.begin(), scene_.lights.end(), [&](const PlacedLight& light) {
        return distance(on_plan(light.pose.at), at).value() < clear_of_light;
    });
}

bool Workbench::near_water_allowed() const {
    if (site_.settings.code == CodeFamily::iec) return true; // other rules, and they are not judged here
    return site_.transformers.empty() ||
           std::any_of(
               site_.transformers.begin(), site_.transformers.end(), [&](const Transformer& transformer) {
                   if (!transformer.model) return true;
                   const TransformerType* type = find_entry(catalog_.transformers, *transformer.model);
                   return type != nullptr && type->water_listed;
               });
}

std::string Workbench::near_water_limit_text() const {
    return length_text(code_limits::low_voltage_to_water.value, site_.settings.units);
}

std::string Workbench::near_water_words(const std::vector<Fixture>& fixtures) const {
    const auto near = std::count_if(fixtures.begin(), fixtures.end(), [&](const Fixture& fixture) {
        return water_at(site_, *fixture.at) == nullptr && near_water(*fixture.at);
    });
    if (near == 0) return "";
    return fmt::format(" {} of them {} nearer than {} to water, as no place farther off does: hang {} on a "
                       "transformer listed for water, on a tap of at most {}.",
                       near, near == 1 ? "stands" : "stand", near_water_limit_text(),
                       near == 1 ? "it" : "them", nominal_volts_text(code_limits::wet_contact.value));
}

std::string Workbench::clear_of_water_words() const {
    return fmt::format("{} from water, as their supply is not listed for it", near_water_limit_text());
}

bool Workbench::near_water(PlanPoint at) const {
    if (site_.settings.code == CodeFamily::iec) return false;
    const std::optional<Metres> away = distance_to_water(site_, at);
    return away && *away < code_limits::low_voltage_to_water.value;
}

bool Workbench::dazzles(const PlacedLight& light) const {
    probe_.lights = {light};
    return std::any_of(site_.viewpoints.begin(), site_.viewpoints.end(), [&](const Viewpoint& viewpoint) {
        return !glare_at(site_, probe_, viewpoint).empty();
    });
}

std::string Workbench::new_id(const std::string& part) {
    std::string stem = part;
    std::replace(stem.begin(), stem.end(), ' ', '-');
    for (int number = 1;; ++number) {
        const std::string id = fmt::format("{}-{}", stem, number);
        if (ids_.insert(id).second) return id;
    }
}

double Workbench::taped(double metres) const {
    const double grain = site_.settings.units == LengthUnit::feet ? 0.1 * metres_per_foot : 0.02;
    return std::round(metres / grain) * grain;
}

double Workbench::taped_height(double metres) const {
    const double grain = site_.settings.units == LengthUnit::feet ? metres_per_foot / 24 : 0.01;
    return std::round(metres / grain) * grain;
}

void Workbench::accept(const std::string& part, std::vector<ProposedLight> lights) {
    for (ProposedLight& light : lights) {
        light.fixture.id = new_id(part);
        scene_.lights.push_back(light_of(light.fixture));
        accepted_.push_back(std::move(light));
    }
}

std::vector<ProposedLight> Workbench::withdraw(const std::string& part) {
    std::vector<ProposedLight> taken;
    std::size_t light = scene_.lights.size() - accepted_.size(); // accepted ones stand last, in their order
    for (auto it = accepted_.begin(); it != accepted_.end();) {
        if (it->fixture.lights != part) {
            ++it;
            ++light;
            continue;
        }
        ids_.erase(it->fixture.id);
        taken.push_back(std::move(*it));
        it = accepted_.erase(it);
        scene_.lights.erase(scene_.lights.begin() + static_cast<std::ptrdiff_t>(light));
    }
    return taken;
}

double Trial::cost() const {
    const Money price = type->price.value_or(Money(0));
    return price.value() * static_cast<double>(fixtures.size());
}

bool preferred(const Trial& a, const Trial& b, bool cheapest) {
    const auto rank = [&](const Trial& t) {
        const auto count = static_cast<double>(t.fixtures.size());
        return std::make_tuple(cheapest ? t.cost() : count, t.excess, cheapest ? count : t.cost(),
                               -t.quality);
    };
    return rank(a) < rank(b);
}

} // namespace rillwatt
