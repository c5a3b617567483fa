#include "rillwatt/light/uplight.hpp"

#include "rillwatt/light/falls_light.hpp"
#include "rillwatt/light/water_surface.hpp"

#include <algorithm>
#include <array>
#include <vector>

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

/// The rays of a light that go up into the air, with the flux of each, and the flux of all rays together.
struct UpwardRays {
    struct One {
        Ray ray;
        double flux = 0;
    };
    std::vector<One> rays;
    double total = 0;
};

/// A mesh of directions round the axis.
UpwardRays upward_rays(const PlacedLight& light) {
    const LightDistribution& distribution = light.photometry->distribution;
    const double field = std::clamp(distribution.half_field({}), 0.01, pi - 0.01);
    UpwardRays all;
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
            all.total += flux;
            const LightPose& pose = light.pose;
            const Ray ray = into_air(light, local.along * pose.axis + local.u * pose.u + local.w * pose.w);
            if (ray.share > 0 && ray.direction.z > 0) all.rays.push_back({ray, flux});
        }
    }
    return all;
}

double across(const Ray& ray) { return std::hypot(ray.direction.x, ray.direction.y); }

/// What stands round a light, by the directions in which its rays may meet it.
class Horizon {
  public:
    Horizon(const Obstacles& obstacles, const FallsIndex& falls, const PlacedLight& light,
            const std::vector<UpwardRays::One>& rays)
        : obstacles_(&obstacles), middle_(on_plan(light.pose.at)) {
        double lowest = 1e300; // rise for each metre on the plan, of the ray that rises least
        for (const UpwardRays::One& one : rays) {
            spread_ = std::max(spread_, distance(middle_, on_plan(one.ray.from)).value());
            start_ = std::min(start_, one.ray.from.z);
            lowest = std::min(lowest, one.ray.direction.z / std::max(across(one.ray), 1e-12));
        }
        const double top = std::max(obstacles.top(), falls.top());
        if (rays.empty() || top <= start_) return;
        const double reach = std::min(far_away, (top - start_) / lowest * (1 + 1e-9) + spread_ + 1e-6);
        const PlanBox box = box_of(middle_, middle_).grown(reach);
        for (const Wall& wall : obstacles.near(box))
            if (std::find(light.own_areas.begin(), light.own_areas.end(), wall.area) == light.own_areas.end())
                add(wall.a, wall.b, wall.height, {0, wall, nullptr});
        for (const Falls* face : falls.near(box))
            add(face->lip_left, face->lip_right, (face->base + face->drop).value(), {0, {}, face});
        for (std::vector<Thing>& sector : sectors_)
            std::stable_sort(sector.begin(), sector.end(),
                             [](const Thing& a, const Thing& b) { return a.rise > b.rise; });
    }

    bool meets(const Ray& ray) const {
        const double rise = ray.direction.z / std::max(across(ray), 1e-12);
        for (const Thing& thing : sectors_[sector_of(std::atan2(ray.direction.y, ray.direction.x))]) {
            if (thing.rise < rise) return false;
            if (thing.face != nullptr ? meets_face(*thing.face, ray) : meets_wall(thing.wall, ray))
                return true;
        }
        return false;
    }

  private:
    static constexpr int sector_count = 64;

    /// A wall or a face, and the steepest a ray can rise that still meets it.
    struct Thing {
        double rise = 0;
        Wall wall;
        const Falls* face = nullptr;
    };

    static std::size_t sector_of(double angle) {
        const int sector = static_cast<int>(std::floor((angle / (2 * pi) + 1) * sector_count));
        return static_cast<std::size_t>(sector % sector_count);
    }

    /// Rays start within `spread_` of the light on the plan: a thing is seen wider by that, and nearer.
    void add(PlanPoint a, PlanPoint b, double height, Thing thing) {
        if (height <= start_) return;
        const double away = distance_to_segment(a, b, middle_) - spread_ - 1e-6;
        thing.rise = away > 0 ? (height - start_) / away * (1 + 1e-9) : 1e300;
        const double first = std::atan2(a.y - middle_.y, a.x - middle_.x);
        const double span = std::remainder(std::atan2(b.y - middle_.y, b.x - middle_.x) - first, 2 * pi);
        const double margin = away > 0 ? std::asin(std::min(1.0, spread_ / (away + spread_))) + 1e-6 : pi;
        const double width = std::abs(span) + 2 * margin;
        const double from = std::min(first, first + span) - margin;
        const int steps = static_cast<int>(std::floor(width / (2 * pi) * sector_count)) + 1;
        for (int k = 0; k <= std::min(steps, sector_count - 1); ++k)
            sectors_[sector_of(std::remainder(from + 2 * pi * k / sector_count, 2 * pi))].push_back(thing);
    }

    bool meets_wall(const Wall& wall, const Ray& ray) const {
        return obstacles_->wall_between(wall, ray.from, moved(ray.from, far_away * ray.direction));
    }

    const Obstacles* obstacles_;
    PlanPoint middle_;
    double spread_ = 0;
    double start_ = 1e300; ///< height of the lowest start of a ray
    std::array<std::vector<Thing>, sector_count> sectors_;
};

} // namespace

FallsIndex::FallsIndex(const Site& site) : site_(&site) {
    std::vector<PlanBox> boxes;
    for (const Falls& falls : site.falls) {
        boxes.push_back(box_of(falls.lip_left, falls.lip_right).grown(touch_tolerance));
        top_ = std::max(top_, (falls.base + falls.drop).value());
    }
    faces_ = PlanIndex(boxes);
}

std::vector<const Falls*> FallsIndex::near(const PlanBox& box) const {
    std::vector<const Falls*> found;
    for (const std::size_t i : faces_.found(box))
        found.push_back(&site_->falls[i]);
    return found;
}

double wasted_upward(const Obstacles& obstacles, const FallsIndex& falls, const PlacedLight& light) {
    const UpwardRays upward = upward_rays(light);
    const Horizon horizon(obstacles, falls, light, upward.rays);
    double wasted = 0;
    for (const UpwardRays::One& one : upward.rays)
        if (!horizon.meets(one.ray)) wasted += one.flux * one.ray.share;
    return upward.total > 0 ? wasted / upward.total : 0;
}

} // namespace rillwatt
