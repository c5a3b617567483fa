#include "rillwatt/light/illuminance.hpp"

#include "rillwatt/light/water_surface.hpp"

#include <algorithm>

namespace rillwatt {
namespace {

constexpr double nearest = 1e-6; ///< metres: at the light centre itself there is no illuminance to speak of
constexpr std::size_t block_size = 64; ///< points that share one list of walls
constexpr double block_width = 8;      ///< metres

/// Light that travels in one medium all the way.
double straight_lux(const PlacedLight& light, SpacePoint point, Vector3 normal, double attenuation) {
    const Vector3 ray = from_to(light.pose.at, point);
    const double squared = dot(ray, ray);
    const double facing = -dot(normal, ray);
    if (facing <= 0 || squared < nearest * nearest) return 0;
    const double distance = std::sqrt(squared);
    const double candela = light.photometry->distribution.candela(light.pose.local((1 / distance) * ray));
    if (candela <= 0) return 0;
    const double lux = light.factor * candela * facing / (squared * distance);
    return attenuation > 0 ? lux * std::exp(-attenuation * distance) : lux;
}

/// The way of a ray that leaves the water.
struct WayOut {
    RefractedRay ray;
    double cosine = 1; ///< of its azimuth on the plan
    double sine = 0;
};

WayOut way_out(const PlacedLight& light, SpacePoint point) {
    const SpacePoint& lamp = light.pose.at;
    const double dx = point.x - lamp.x;
    const double dy = point.y - lamp.y;
    const double distance = std::hypot(dx, dy);
    WayOut way;
    way.ray = refracted_ray(*light.water_level - lamp.z, point.z - *light.water_level, distance);
    if (distance > 0) {
        way.cosine = dx / distance;
        way.sine = dy / distance;
    }
    return way;
}

/// Whether a plane turns its back on everything that comes up from where the light is: then the ray need not
/// be found.
bool faces_away(const PlacedLight& light, SpacePoint point, Vector3 normal) {
    const Vector3 ray = from_to(light.pose.at, point);
    return normal.z >= 0 && normal.x * ray.x + normal.y * ray.y >= 0;
}

double refracted_lux(const PlacedLight& light, SpacePoint point, Vector3 normal) {
    if (faces_away(light, point, normal)) return 0;
    const WayOut way = way_out(light, point);
    const auto direction = [&](double angle) {
        return Vector3{std::sin(angle) * way.cosine, std::sin(angle) * way.sine, std::cos(angle)};
    };
    const double facing = -dot(normal, direction(way.ray.in_air));
    if (facing <= 0) return 0;
    const double candela =
        light.photometry->distribution.candela(light.pose.local(direction(way.ray.in_water)));
    if (candela <= 0) return 0;
    const double across_the_ray = way.ray.horizontal / std::cos(way.ray.in_air);
    return light.factor * candela * across_the_ray * facing * std::exp(-light.attenuation * way.ray.path);
}

bool leaves_water(const PlacedLight& light, SpacePoint point) {
    return light.water_level && point.z > *light.water_level;
}

/// Where the last straight piece to the point begins: the lamp, or where its ray leaves the water.
SpacePoint seen_source(const PlacedLight& light, SpacePoint point) {
    if (!leaves_water(light, point)) return light.pose.at;
    const WayOut way = way_out(light, point);
    const SpacePoint& lamp = light.pose.at;
    return {lamp.x + way.ray.exit * way.cosine, lamp.y + way.ray.exit * way.sine, *light.water_level};
}

std::vector<Wall> walls_that_count(const PlacedLight& light, const Obstacles& obstacles, const PlanBox& box) {
    std::vector<Wall> walls = obstacles.near(box);
    const auto own = [&](const Wall& wall) {
        return std::find(light.own_areas.begin(), light.own_areas.end(), wall.area) != light.own_areas.end();
    };
    walls.erase(std::remove_if(walls.begin(), walls.end(), own), walls.end());
    return walls;
}

} // namespace

std::vector<PointBlock> blocks_of(const std::vector<SpacePoint>& points) {
    std::vector<PointBlock> blocks;
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (!blocks.empty()) {
            PointBlock& block = blocks.back();
            PlanBox box = block.box;
            box.include(points[i].x, points[i].y);
            const double width = std::max(box.x_high - box.x_low, box.y_high - box.y_low);
            if (block.end - block.begin < block_size && width <= block_width) {
                block.box = box;
                block.end = i + 1;
                continue;
            }
        }
        blocks.push_back({i, i + 1, box_of(on_plan(points[i]), on_plan(points[i]))});
    }
    return blocks;
}

void add_light(const PlacedLight& light, const Obstacles& obstacles, LitPoints& target,
               const PointBlock& block) {
    PlanBox box = block.box;
    box.include(light.pose.at.x, light.pose.at.y);
    const std::vector<Wall> walls = walls_that_count(light, obstacles, box);
    for (std::size_t i = block.begin; i < block.end; ++i) {
        const SpacePoint point = target.points[i];
        const double lux = unblocked_lux(light, point, target.normal);
        if (lux <= 0) continue;
        if (walls.empty() || !obstacles.blocked(walls, seen_source(light, point), point))
            target.lux[i] += lux;
    }
}

double unblocked_lux(const PlacedLight& light, SpacePoint point, Vector3 normal) {
    if (leaves_water(light, point)) return refracted_lux(light, point, normal);
    return straight_lux(light, point, normal, light.water_level ? light.attenuation : 0);
}

void add_light(const PlacedLight& light, const Obstacles& obstacles, LitPoints& target) {
    target.lux.resize(target.points.size());
    if (light.factor <= 0 || light.photometry->distribution.dark()) return;
    for (const PointBlock& block : blocks_of(target.points))
        add_light(light, obstacles, target, block);
}

void illuminate(const LightScene& scene, LitPoints& target) {
    target.lux.assign(target.points.size(), 0);
    for (const PointBlock& block : blocks_of(target.points))
        for (const PlacedLight& light : scene.lights)
            if (light.factor > 0 && !light.photometry->distribution.dark())
                add_light(light, scene.obstacles, target, block);
}

LuxSpread spread_of(const std::vector<double>& lux) {
    LuxSpread spread;
    if (lux.empty()) return spread;
    const auto [least, greatest] = std::minmax_element(lux.begin(), lux.end());
    double sum = 0;
    for (const double value : lux)
        sum += value;
    spread.mean = sum / static_cast<double>(lux.size());
    spread.least = *least;
    spread.greatest = *greatest;
    spread.darkest = static_cast<std::size_t>(least - lux.begin());
    return spread;
}

} // namespace rillwatt
