// Lights at the foot of a falls: evenly across the width, a short way in front of the sheet, looking up at
// it. Each choice of number, type, distance and tilt is judged by computing the face.
#include "rillwatt/layout/places.hpp"
#include "rillwatt/light/falls_light.hpp"
#include "rillwatt/limits/light_limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"

#include <fmt/format.h>

#include "workbench.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

constexpr double well_lit_share =
    0.8; ///< of the face at 20 lx or more: what a proposal aims for, common practice
constexpr double lens_depth = 4 * metres_per_foot / 12; ///< under the surface; common practice 50 to 150 mm
constexpr double least_depth = 0.05;
constexpr double width_for_two = 1.0;   ///< metres: wider falls get two lights at least, common practice
constexpr double widest_share = 1.0;    ///< metres of width for one light, common practice 0.6 to 1 m
constexpr double narrowest_share = 0.3; ///< metres: closer lights are no proposal
constexpr double wet_distances[] = {0.2, 0.3, 0.45, 0.6}; ///< metres in front of the sheet
constexpr double dry_distances[] = {0.4, 0.6, 0.9, 1.3, 1.8};
constexpr double leans[] = {0, 10, 20, 30};   ///< degrees from plumb towards the sheet, in water
constexpr double aims_up[] = {0.4, 0.6, 0.8}; ///< share of the drop a dry light looks at

/// How the lights of one trial stand and look.
struct Stance {
    double distance = 0; ///< metres in front of the sheet
    double lean = 0;     ///< under water: degrees from plumb towards the sheet
    double aim_up = 0.5; ///< dry: share of the drop it looks at
};

/// Small measures as a crew reads them: "4 in", "10 cm".
std::string small_length_text(double metres, LengthUnit unit) {
    return unit == LengthUnit::feet ? trimmed_text(metres / metres_per_foot * 12, 1) + " in"
                                    : trimmed_text(metres * 100, 1) + " cm";
}

class FallsPlanner {
  public:
    FallsPlanner(const Workbench& bench, const Falls& falls, WaterRule water)
        : bench_(bench), falls_(falls), water_(water),
          width_(distance(falls.lip_left, falls.lip_right).value()), normal_(falls_normal(falls)),
          face_(falls_face(falls)) {
        illuminate(bench.scene(), face_);
    }

    std::optional<Trial> best() const;

  private:
    std::optional<Fixture> fixture(const FixtureType& type, double across, const Stance& stance) const;
    std::optional<Fixture> wet(Fixture f, const Stance& stance) const;
    Fixture dry(Fixture f, double across, const Stance& stance) const;
    std::optional<Trial> trial(const FixtureType& type, int count, const Stance& stance) const;
    std::vector<Stance> stances(const FixtureType& type) const;
    std::string remark(const Fixture& fixture, double across, const Stance& stance, bool under_water) const;

    const Workbench& bench_;
    const Falls& falls_;
    WaterRule water_;
    double width_;
    Vector3 normal_;
    LitPoints face_;
};

std::vector<Stance> FallsPlanner::stances(const FixtureType& type) const {
    std::vector<Stance> all;
    if (type.kind == FixtureKind::submersible) {
        for (const double distance : wet_distances)
            for (const double lean : leans)
                all.push_back({distance, lean, 0});
    } else {
        for (const double distance : dry_distances)
            for (const double up : aims_up)
                all.push_back({distance, 0, up});
    }
    return all;
}

/// Below the surface of the water at the foot, no deeper than the pool.
std::optional<Fixture> FallsPlanner::wet(Fixture f, const Stance& stance) const {
    const Area* water = water_at(bench_.site(), *f.at);
    if (water == nullptr || water->level.value() > falls_.base.value() + falls_.drop.value()) return {};
    const double pool = falls_.pool_depth.value();
    const double depth =
        pool > 0 ? std::clamp(lens_depth, std::min(least_depth, pool / 2), std::max(pool - 0.02, pool / 2))
                 : lens_depth;
    f.mounting = Metres(bench_.taped_height(water->level.value() - depth));
    if (f.mounting->value() >= water->level.value()) f.mounting = Metres(water->level.value() - depth);
    const double bearing = std::atan2(-normal_.y, -normal_.x) / degree;
    f.aim.bearing = Degrees(std::round(bearing < 0 ? bearing + 360 : bearing));
    f.aim.tilt = Degrees(180 - stance.lean);
    return f;
}

Fixture FallsPlanner::dry(Fixture f, double across, const Stance& stance) const {
    const SpacePoint target = falls_point(falls_, across, stance.aim_up);
    f.aim.at = SpacePoint{bench_.taped(target.x), bench_.taped(target.y), bench_.taped_height(target.z)};
    if (falls_.base.value() != 0) f.elevation = Metres(bench_.taped_height(falls_.base.value()));
    return f;
}

std::optional<Fixture> FallsPlanner::fixture(const FixtureType& type, double across,
                                             const Stance& stance) const {
    const SpacePoint foot = falls_point(falls_, across, 0);
    Fixture f;
    f.model = type.id;
    f.lights = falls_.id;
    f.at = PlanPoint{bench_.taped(foot.x + stance.distance * normal_.x),
                     bench_.taped(foot.y + stance.distance * normal_.y)};
    if (type.kind == FixtureKind::submersible)
        return type.rating == WaterRating::submersible ? wet(f, stance) : std::nullopt;
    if (!bench_.free_ground(*f.at, water_)) return {};
    return dry(f, across, stance);
}

std::string FallsPlanner::remark(const Fixture& f, double across, const Stance& stance,
                                 bool under_water) const {
    const LengthUnit unit = bench_.site().settings.units;
    const std::string place = fmt::format("{} from the left end of the lip, {} in front of the sheet",
                                          decimal_length_text(Metres(across * width_), unit, 1),
                                          small_length_text(stance.distance, unit));
    if (!under_water) return place + ", dry, aimed at the face";
    const Area* water = water_at(bench_.site(), *f.at);
    const double depth = water->level.value() - f.mounting->value();
    const std::string lean =
        stance.lean > 0 ? fmt::format("leaning {} degrees to it", stance.lean) : "straight up";
    return fmt::format("{}, {} under the surface, {}", place, small_length_text(depth, unit), lean);
}

std::optional<Trial> FallsPlanner::trial(const FixtureType& type, int count, const Stance& stance) const {
    Trial result;
    result.type = &type;
    LitPoints lit = face_;
    for (int k = 0; k < count; ++k) {
        const double across = (k + 0.5) / count;
        const std::optional<Fixture> f = fixture(type, across, stance);
        if (!f) return {};
        const PlacedLight light = bench_.light_of(*f);
        if (bench_.dazzles(light)) return {};
        result.remarks.push_back(remark(*f, across, stance, light.water_level.has_value()));
        result.fixtures.push_back(*f);
        add_light(light, bench_.scene().obstacles, lit);
    }
    const FallsLight light = falls_light_of(lit);
    if (light.lit_share < well_lit_share) return {};
    result.spread = spread_of(lit.lux);
    result.quality = light.lit_share + result.spread.least / std::max(result.spread.mean, 1e-9);
    return result;
}

/// Water lights first: the foot of the sheet is their classic place. Dry lights where there is no water to
/// put them in.
std::optional<Trial> FallsPlanner::best() const {
    const int least =
        std::max(width_ > width_for_two ? 2 : 1, static_cast<int>(std::ceil(width_ / widest_share - 0.2)));
    const int most = std::max(least, static_cast<int>(std::ceil(width_ / narrowest_share)));
    for (const FixtureKind kind : {FixtureKind::submersible, FixtureKind::accent}) {
        std::optional<Trial> best;
        for (int count = least; count <= most && (!best || bench_.cheapest()); ++count)
            for (const FixtureType* type : bench_.offer(Purpose::falls)) {
                if (type->kind != kind) continue;
                for (const Stance& stance : stances(*type)) {
                    std::optional<Trial> t = trial(*type, count, stance);
                    if (t && (!best || preferred(*t, *best, bench_.cheapest()))) best = std::move(t);
                }
            }
        if (best) return best;
    }
    return {};
}

} // namespace

namespace {

/// Dry lights for falls look at them from near by: that may be near water.
WaterRule dry_rule(const Workbench& bench) {
    return bench.near_water_allowed() ? WaterRule::may_be_near : WaterRule::keep_clear;
}

std::string unmet_words(const Workbench& bench) {
    if (bench.offer(Purpose::falls).empty())
        return "no type on offer lights falls; name some with --model or put submersible lights into [stock]";
    return fmt::format("no number of the types on offer lights the face from a place that is free, or not "
                       "without dazzling a viewer; offer brighter ones or draw the water at its foot{}",
                       bench.near_water_allowed() ? "" : "; dry lights keep " + bench.clear_of_water_words());
}

} // namespace

std::optional<PartProposal> plan_falls(const Workbench& bench, const Falls& falls) {
    LitPoints face = falls_face(falls);
    illuminate(bench.scene(), face);
    if (!below(falls_light_of(face).lit_share, limits::falls_lit_share.value)) return {};
    PartProposal proposal;
    const std::optional<Trial> trial = FallsPlanner(bench, falls, dry_rule(bench)).best();
    if (!trial) {
        proposal.unmet = UnmetTarget{falls.id, falls.location, unmet_words(bench)};
        return proposal;
    }
    const std::size_t count = trial->fixtures.size();
    proposal.reason =
        fmt::format("{} gets {} {} at its foot: {} on average, {} at the darkest spot.{}", falls.id, count,
                    trial->type->id, lux_text(Lux(trial->spread.mean)), lux_text(Lux(trial->spread.least)),
                    bench.near_water_words(trial->fixtures));
    for (std::size_t i = 0; i < count; ++i)
        proposal.lights.push_back(
            {trial->fixtures[i], fmt::format("{}, {} of {}: {}", falls.id, i + 1, count, trial->remarks[i])});
    return proposal;
}

} // namespace rillwatt
