#include "rillwatt/light/light_pose.hpp"

#include <algorithm>

namespace rillwatt {
namespace {

constexpr double parallel = 1e-9;

Vector3 bearing_vector(Degrees bearing) {
    return {std::cos(bearing.radians()), std::sin(bearing.radians()), 0};
}

/// What is left of `v` at right angles to the axis, with length 1; zero when nothing is.
Vector3 square_to(Vector3 axis, Vector3 v) {
    const Vector3 rest = v - dot(v, axis) * axis;
    return length(rest) > parallel ? unit(rest) : Vector3{};
}

/// Type C: horizontal 0 on the side of the bearing, horizontal 90 counter-clockwise seen against the axis.
void turn_type_c(LightPose& pose, Vector3 bearing) {
    pose.u = square_to(pose.axis, bearing);
    if (pose.u == Vector3{}) pose.u = square_to(pose.axis, straight_up);
    pose.w = cross(pose.u, pose.axis);
}

/// Types A and B: the top stays up, or lies along the bearing where the axis is plumb; angles count
/// clockwise.
void turn_type_ab(LightPose& pose, Vector3 bearing) {
    pose.u = square_to(pose.axis, straight_up);
    if (pose.u == Vector3{}) pose.u = pose.axis.z < 0 ? bearing : -bearing;
    pose.w = cross(pose.axis, pose.u);
}

LightPose turned(SpacePoint at, Vector3 axis, Vector3 bearing, PhotometricType type) {
    LightPose pose;
    pose.at = at;
    pose.axis = axis;
    if (type == PhotometricType::c)
        turn_type_c(pose, bearing);
    else
        turn_type_ab(pose, bearing);
    return pose;
}

} // namespace

Metres default_mounting(FixtureKind kind) {
    switch (kind) {
    case FixtureKind::path:
        return inches(18);
    case FixtureKind::step:
        return inches(12);
    case FixtureKind::downlight:
        return feet(10);
    case FixtureKind::accent:
        return inches(6);
    case FixtureKind::submersible:
        return inches(-4);
    case FixtureKind::other:
        break;
    }
    return Metres(0);
}

Degrees default_tilt(FixtureKind kind) {
    const bool up = kind == FixtureKind::submersible || kind == FixtureKind::accent;
    return Degrees(up ? 180 : 0);
}

double LightPose::tilt() const { return std::acos(std::clamp(-axis.z, -1.0, 1.0)) / degree; }

LightPose pose_at(SpacePoint at, Degrees bearing, Degrees tilt, PhotometricType type) {
    const Vector3 level = bearing_vector(bearing);
    const Vector3 axis = std::sin(tilt.radians()) * level + Vector3{0, 0, -std::cos(tilt.radians())};
    return turned(at, axis, level, type);
}

LightPose pose_towards(SpacePoint at, SpacePoint target, std::optional<Degrees> bearing,
                       PhotometricType type) {
    const Vector3 line = from_to(at, target);
    if (length(line) < parallel) return pose_at(at, bearing.value_or(Degrees(0)), Degrees(0), type);
    const bool plumb = std::hypot(line.x, line.y) < parallel;
    const Vector3 level =
        bearing || plumb ? bearing_vector(bearing.value_or(Degrees(0))) : unit(Vector3{line.x, line.y, 0});
    return turned(at, unit(line), level, type);
}

std::optional<SpacePoint> light_centre(const Fixture& fixture, FixtureKind kind, const Area* water) {
    if (!fixture.at) return {};
    double grade = fixture.elevation.value_or(Metres(0)).value();
    const bool below_surface = kind == FixtureKind::submersible && water != nullptr && !fixture.mounting;
    if (below_surface && !fixture.elevation) grade = water->level.value();
    const double mounting = fixture.mounting.value_or(default_mounting(kind)).value();
    return SpacePoint{fixture.at->x, fixture.at->y, grade + mounting};
}

LightPose fixture_pose(const Fixture& fixture, FixtureKind kind, SpacePoint centre, PhotometricType type) {
    const Aim& aim = fixture.aim;
    if (aim.at) return pose_towards(centre, *aim.at, aim.bearing, type);
    return pose_at(centre, aim.bearing.value_or(Degrees(0)), aim.tilt.value_or(default_tilt(kind)), type);
}

} // namespace rillwatt
