#include "rillwatt/light/light_pose.hpp"

#include "lamps.hpp"

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

void check_near(Vector3 found, Vector3 expected) {
    CHECK(found.x == Approx(expected.x).margin(1e-12));
    CHECK(found.y == Approx(expected.y).margin(1e-12));
    CHECK(found.z == Approx(expected.z).margin(1e-12));
}

Fixture fixture_at(double x, double y) {
    Fixture fixture;
    fixture.at = PlanPoint{x, y};
    return fixture;
}

LightPose pose_of(const Fixture& fixture, FixtureKind kind) {
    return fixture_pose(fixture, kind, *light_centre(fixture, kind, nullptr), PhotometricType::c);
}

} // namespace

TEST_CASE("tilt counts from straight down, bearing from +x towards +y") {
    check_near(pose_at({}, Degrees(0), Degrees(0)).axis, {0, 0, -1});
    check_near(pose_at({}, Degrees(0), Degrees(90)).axis, {1, 0, 0});
    check_near(pose_at({}, Degrees(90), Degrees(90)).axis, {0, 1, 0});
    check_near(pose_at({}, Degrees(90), Degrees(180)).axis, {0, 0, 1});
    check_near(pose_at({}, Degrees(270), Degrees(150)).axis, {0, -0.5, std::sqrt(0.75)});
}

TEST_CASE(
    "horizontal 0 of a file lies along the bearing, and its angles count counter-clockwise from above") {
    for (const double tilt : {0.0, 30.0, 179.0, 180.0}) {
        const LightPose pose = pose_at({}, Degrees(40), Degrees(tilt));
        CHECK(std::atan2(pose.u.y, pose.u.x) / degree == Approx(40));
        CHECK(dot(pose.u, pose.axis) == Approx(0).margin(1e-12));
        check_near(pose.w, cross(pose.u, pose.axis));
    }
    check_near(pose_at({}, Degrees(0), Degrees(0)).w, {0, 1, 0});
    check_near(pose_at({}, Degrees(0), Degrees(90)).u, {0, 0, 1}); // level along the bearing: up
}

TEST_CASE("the top of a floodlight stays up however far it is tilted") {
    for (const double tilt : {10.0, 89.0, 91.0, 170.0}) {
        const LightPose pose = pose_at({}, Degrees(0), Degrees(tilt), PhotometricType::b);
        CHECK(pose.u.z > 0);
        check_near(pose.w, {0, -1, 0}); // to the right of someone who looks along the beam
    }
    check_near(pose_at({}, Degrees(90), Degrees(0), PhotometricType::a).u, {0, 1, 0});
}

TEST_CASE("a point to aim at wins over bearing and tilt, those win over the kind's defaults") {
    Fixture fixture = fixture_at(1, 2);
    check_near(pose_of(fixture, FixtureKind::path).axis, {0, 0, -1});
    check_near(pose_of(fixture, FixtureKind::accent).axis, {0, 0, 1});
    fixture.aim.tilt = Degrees(90);
    check_near(pose_of(fixture, FixtureKind::accent).axis, {1, 0, 0});
    fixture.aim.bearing = Degrees(180);
    check_near(pose_of(fixture, FixtureKind::accent).axis, {-1, 0, 0});
    fixture.mounting = Metres(1);
    fixture.aim.at = SpacePoint{1, 5, 5};
    check_near(pose_of(fixture, FixtureKind::accent).axis, unit({0, 3, 4}));
    CHECK(std::atan2(pose_of(fixture, FixtureKind::accent).u.y, pose_of(fixture, FixtureKind::accent).u.x) >
          0); // a bearing beside a point turns the light about its axis
}

TEST_CASE("light centres without a written mounting sit where the kind has them") {
    const struct {
        FixtureKind kind;
        double metres;
    } rows[] = {{FixtureKind::path, 0.4572},     {FixtureKind::step, 0.3048},
                {FixtureKind::downlight, 3.048}, {FixtureKind::submersible, -0.1016},
                {FixtureKind::accent, 0.1524},   {FixtureKind::other, 0}};
    for (const auto& row : rows)
        CHECK(light_centre(fixture_at(0, 0), row.kind, nullptr)->z == Approx(row.metres).margin(1e-12));
    Fixture raised = fixture_at(0, 0);
    raised.elevation = Metres(0.6);
    CHECK(light_centre(raised, FixtureKind::path, nullptr)->z == Approx(0.6 + 0.4572));
    raised.mounting = Metres(-0.2);
    CHECK(light_centre(raised, FixtureKind::submersible, nullptr)->z == Approx(0.4));
    CHECK_FALSE(light_centre(Fixture{}, FixtureKind::path, nullptr));
}

TEST_CASE(
    "a submersible in a raised or sunken basin sits below that surface, unless its mounting is written") {
    Area basin;
    basin.level = Metres(0.5);
    CHECK(light_centre(fixture_at(0, 0), FixtureKind::submersible, &basin)->z == Approx(0.5 - 0.1016));
    Fixture written = fixture_at(0, 0);
    written.mounting = Metres(0.1);
    CHECK(light_centre(written, FixtureKind::submersible, &basin)->z == Approx(0.1));
}
