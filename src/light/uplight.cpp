#include "rillwatt/light/uplight.hpp"

#include "rillwatt/light/falls_light.hpp"
#include "rillwatt/light/water_surface.hpp"

#include <algorithm>

namespace rillwatt {
namespace {

constexpr int rings = 20; ///< within the field angle, and as many outside it
constexpr int spokes = 36;
constexpr double far_away = 200; ///< metres: past everything in a garden

/// A ray that has left the light, in air, and the share of its light that got there.
struct Ray {
    SpacePoint from;
    Vector3 direction;
    double share = 1;
};

/// The ray as it goes on in air; share 0 where the surface throws all of it back.
Ray into_air(const PlacedLight& light, Vector3 direction) {
    if (!light.water_level) return {light.pose.at, direction, 1};
    if (direction.z <= 0) return {light.pose.at, direction, 0};
    const double in_water = std::acos(std::min(1.0, direction.z));
    const std::optional<double> in_air = angle_in_air(in_water);
    if (!in_air) return {light.pose.at, direction, 0};
    const double path = (*light.water_level - light.pose.at.z) / direction.z;
    const double across = std::hypot(direction.x, direction.y);
    const double bend = across > 0 ? std::sin(*in_air) / across : 1;
    return {moved(light.pose.at, path * direction),
            {direction.x * bend, direction.y * bend, std::cos(*in_air)},
            surface_transmittance(in_water) * std::exp(-light.attenuation * path)};
}

bool meets_face(const Falls& falls, const Ray& ray) {
    const Vector3 normal = falls_normal(falls);
    const double approach = dot(normal, ray.direction);
    if (std::abs(approach) < 1e-9) return false;
    const double t = dot(normal, from_to(ray.from, falls_point(falls, 0, 0))) / approach;
    if (t <= 0) return false;
    const SpacePoint hit = moved(ray.from, t * ray.direction);
    const double width = distance(falls.lip_left, falls.lip_right).value();
    const Vector3 along = from_to(falls_point(falls, 0, 0), falls_point(falls, 1, 0));
    const double across = dot(from_to(falls_point(falls, 0, 0), hit), along) / (width * width);
    const double up = (hit.z - falls.base.value()) / falls.drop.value();
    return across >= 0 && across <= 1 && up >= 0 && up <= 1;
}

/// How far along a rising ray everything lies that is no higher than `top`.
double below_top(const Ray& ray, double top) {
    if (ray.from.z >= top) return 0;
    return ray.direction.z > 0 ? (top - ray.from.z) / ray.direction.z : far_away;
}

bool meets_wall(const Obstacles& obstacles, const PlacedLight& light, const Ray& ray) {
    if (obstacles.walls().empty()) return false;
    const double far = std::min(far_away, below_top(ray, obstacles.top()));
    return far > 0 &&
           obstacles.blocking_area(ray.from, moved(ray.from, far * ray.direction), light.own_areas);
}

bool meets_something(const Site& site, const Obstacles& obstacles, const FallsIndex& falls,
                     const PlacedLight& light, const Ray& ray) {
    const std::vector<std::size_t> faces = falls.along(ray.from, ray.direction);
    return std::any_of(faces.begin(), faces.end(),
                       [&](std::size_t i) { return meets_face(site.falls[i], ray); }) ||
           meets_wall(obstacles, light, ray);
}

} // namespace

FallsIndex::FallsIndex(const Site& site) {
    std::vector<PlanBox> boxes;
    for (const Falls& falls : site.falls) {
        boxes.push_back(box_of(falls.lip_left, falls.lip_right).grown(touch_tolerance));
        all_.include(boxes.back().x_low, boxes.back().y_low);
        all_.include(boxes.back().x_high, boxes.back().y_high);
        top_ = std::max(top_, falls.base.value() + falls.drop.value());
    }
    faces_ = PlanIndex(boxes);
}

std::vector<std::size_t> FallsIndex::along(SpacePoint from, Vector3 direction) const {
    if (all_.empty()) return {};
    PlanBox whole = all_;
    whole.include(from.x, from.y);
    const double across = std::hypot(direction.x, direction.y);
    double far = (whole.x_high - whole.x_low + whole.y_high - whole.y_low) / std::max(across, 1e-12);
    if (direction.z > 0) far = std::min(far, (top_ - from.z) / direction.z * (1 + 1e-9) + touch_tolerance);
    if (far <= 0) return {};
    return faces_.found_along(on_plan(from), on_plan(moved(from, far * direction)));
}

double wasted_upward(const Site& site, const Obstacles& obstacles, const FallsIndex& falls,
                     const PlacedLight& light) {
    const LightDistribution& distribution = light.photometry->distribution;
    const double field = std::clamp(distribution.half_field({}), 0.01, pi - 0.01);
    double total = 0;
    double wasted = 0;
    for (int ring = 0; ring < 2 * rings; ++ring) {
        const bool inner = ring < rings;
        const double step = (inner ? field : pi - field) / rings;
        const double angle = inner ? (ring + 0.5) * step : field + (ring - rings + 0.5) * step;
        for (int spoke = 0; spoke < spokes; ++spoke) {
            const double turn = 2 * pi * (spoke + 0.5) / spokes;
            const LocalDirection local{std::cos(angle), std::sin(angle) * std::cos(turn),
                                       std::sin(angle) * std::sin(turn)};
            const double flux = distribution.candela(local) * std::sin(angle) * step;
            if (flux <= 0) continue;
            total += flux;
            const LightPose& pose = light.pose;
            const Ray ray = into_air(light, local.along * pose.axis + local.u * pose.u + local.w * pose.w);
            if (ray.share <= 0 || ray.direction.z <= 0 || meets_something(site, obstacles, falls, light, ray))
                continue;
            wasted += flux * ray.share;
        }
    }
    return total > 0 ? wasted / total : 0;
}

} // namespace rillwatt
