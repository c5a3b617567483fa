#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/light/photometric_web.hpp"
#include "rillwatt/light/vector3.hpp"
#include "rillwatt/site/site.hpp"

namespace rillwatt {

/// Height of the light centre above grade when the site file gives none: 18 in for path, 12 in for step, 10
/// ft for downlight, 6 in for accent, -4 in for submersible, 0 for other.
Metres default_mounting(FixtureKind kind);

/// 0 (straight down) for path, step and downlight, 180 (straight up) for submersible and accent, 0 for other.
Degrees default_tilt(FixtureKind kind);

/// Where a light is and which way it is turned: unit vectors at right angles.
struct LightPose {
    SpacePoint at;
    Vector3 axis{0, 0, -1};
    Vector3 u{1, 0, 0}; ///< type C: along horizontal 0; types A and B: the top of the light
    Vector3 w{0, 1, 0}; ///< type C: along horizontal 90; types A and B: to the right

    LocalDirection local(Vector3 direction) const {
        return {dot(direction, axis), dot(direction, u), dot(direction, w)};
    }

    /// Degrees from straight down.
    double tilt() const;
};

/// A light centre `at`, turned to `bearing` (degrees on the plan, 0 = +x, 90 = +y) and `tilt` (0 = straight
/// down, 90 = level, 180 = straight up). Horizontal 0 of a type C file points along the bearing as far as the
/// tilt allows; where the axis itself is level along the bearing, it points up.
LightPose pose_at(SpacePoint at, Degrees bearing, Degrees tilt, PhotometricType type = PhotometricType::c);

/// A light centre `at` that looks towards `target`; horizontal 0 lies on the side of `bearing`.
LightPose pose_towards(SpacePoint at, SpacePoint target, std::optional<Degrees> bearing = {},
                       PhotometricType type = PhotometricType::c);

/// The centre of a fixture's light. `water` is the water area it stands in, or null: a submersible without a
/// written mounting sits below that area's surface. Empty when the fixture is not on the plan.
std::optional<SpacePoint> light_centre(const Fixture& fixture, FixtureKind kind, const Area* water);

/// The pose of a fixture whose light centre is known: a point to aim at wins over bearing and tilt, those win
/// over the defaults of the kind.
LightPose fixture_pose(const Fixture& fixture, FixtureKind kind, SpacePoint centre, PhotometricType type);

} // namespace rillwatt
