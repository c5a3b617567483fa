#include "rillwatt/light/obstacles.hpp"
#include "rillwatt/light/views.hpp"

#include "gardens.hpp"
#include "lamps.hpp"

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

/// A shed of 2 m between x 2 and 4, y -1 and 1.
Site site_with_shed() {
    Site site = loss_free_site();
    site.areas.push_back(area_of("shed", AreaKind::building, 2, -1, 4, 1, 2));
    return site;
}

bool blocked(const Site& site, SpacePoint from, SpacePoint to) {
    const bool there = Obstacles(site).blocking_area(from, to).has_value();
    CHECK(Obstacles(site).blocking_area(to, from).has_value() == there); // the same both ways
    return there;
}

} // namespace

TEST_CASE("a wall between lamp and point is dark, unless the line passes over or beside it") {
    const Site site = site_with_shed();
    CHECK(blocked(site, {0, 0, 0.5}, {6, 0, 0}));
    CHECK_FALSE(blocked(site, {0, 0, 0.5}, {1.5, 0, 0}));   // in front of it
    CHECK_FALSE(blocked(site, {0, 1.5, 0.5}, {6, 1.5, 0})); // beside it
    CHECK_FALSE(blocked(site, {0, 0, 2.5}, {6, 0, 2.2}));   // over it
    CHECK(blocked(site, {0, 0, 3}, {6, 0, 0}));             // meets the far wall 1 m up
    CHECK_FALSE(blocked(site, {0, 0, 6.1}, {6, 0, 0}));     // clears the far top edge: 2.03 m there
    CHECK(blocked(site, {0, 0, 5.9}, {6, 0, 0}));           // 1.97 m there
}

TEST_CASE("touching a wall or its corner is free, going through corners is not") {
    const Site site = site_with_shed();
    CHECK_FALSE(blocked(site, {2, 0, 1}, {0, 0, 0}));   // a lamp on the wall shines away from it
    CHECK(blocked(site, {2, 0, 1}, {6, 0, 0}));         // and not through the shed
    CHECK_FALSE(blocked(site, {0, 1, 0.5}, {6, 1, 0})); // along the face
    CHECK_FALSE(blocked(site, {1, 0, 0.5}, {3, 2, 0})); // grazes the corner (2, 1)
    CHECK(blocked(site, {1, -2, 0.5}, {5, 2, 0}));      // through (2, -1) and (4, 1): right across
    CHECK_FALSE(blocked(site, {0, -1, 0}, {0, -1, 3})); // plumb
}

TEST_CASE(
    "areas without height block nothing, planting with height does, but not the light that stands in it") {
    Site site = loss_free_site();
    site.areas.push_back(area_of("lawn", AreaKind::lawn, 2, -1, 4, 1, 0));
    CHECK_FALSE(blocked(site, {0, 0, 0.5}, {6, 0, 0}));
    site.areas.push_back(area_of("hedge", AreaKind::bed, 2, -1, 4, 1, 1));
    CHECK(blocked(site, {0, 0, 0.5}, {6, 0, 0}));
    site.fixtures.push_back(light_at("L", "hat", 3, 0));
    const Catalog catalog = catalog_of({light_type("hat", FixtureKind::path, HatDistribution{})});
    const auto lux = [&] {
        return compute_light(site, catalog, nullptr, {}, {{4.4, 0, 0}}).value->points[0].horizontal.value();
    };
    CHECK(lux() > 0);
    site.areas[1].kind = AreaKind::building;
    CHECK(lux() == 0);
}

TEST_CASE("falls are seen over walls but not through them") {
    Site site = site_with_shed();
    site.falls.push_back(falls_of("f", {6, 0.5}, {6, -0.5}, 1)); // faces -x
    Viewpoint window = viewpoint_of("window", 0, 0, 1.6);
    const auto seen = [&] { return sightline(site, Obstacles(site), window, 0); };
    CHECK_FALSE(seen().visible);
    CHECK(seen().blocked_by == "shed");
    CHECK(seen().seen_share == 0);
    window.eye = Metres(8); // from the roof terrace
    CHECK(seen().visible);
    CHECK(seen().blocked_by.empty());
    CHECK_FALSE(seen().from_behind);
    window = viewpoint_of("inside the shed", 3, 0, 1.6); // looks out of its own building
    CHECK(seen().visible);
    window = viewpoint_of("wall", 4, 0, 1.6);
    CHECK(seen().visible);
    window = viewpoint_of("far bank", 9, 0, 1.6);
    CHECK(seen().visible);
    CHECK(seen().from_behind);
}

TEST_CASE("glare: the eye within the field angle and 20 m, nothing between") {
    // Beam of 36 degrees: field half-angle 32.17 (arccos 0.1^(1/13.813)).
    Site site = loss_free_site();
    site.fixtures.push_back(light_at("spot", "spot", 0, 0));
    site.fixtures[0].mounting = Metres(1.5);
    site.fixtures[0].aim.tilt = Degrees(90);
    site.viewpoints.push_back(viewpoint_of("bench", 10, 0, 1.5));
    const Catalog catalog =
        catalog_of({light_type("spot", FixtureKind::accent, BeamDistribution{Degrees(36)})});
    const auto glare = [&] { return compute_light(site, catalog, nullptr, {}).value->viewpoints[0].glare; };
    const auto turn_to = [&](double bearing) { site.fixtures[0].aim.bearing = Degrees(bearing); };
    turn_to(30);
    REQUIRE(glare().size() == 1);
    CHECK(glare()[0].angle.value() == Approx(30));
    CHECK(glare()[0].turn_by.value() == Approx(2.17).margin(0.01));
    CHECK_FALSE(glare()[0].mirrored);
    turn_to(32.1);
    CHECK(glare().size() == 1);
    turn_to(32.3);
    CHECK(glare().empty());
    turn_to(0);
    site.viewpoints[0].at = {19.99, 0};
    CHECK(glare().size() == 1);
    site.viewpoints[0].at = {20.01, 0};
    CHECK(glare().empty());
    site.viewpoints[0].at = {10, 0};
    site.areas.push_back(area_of("fence", AreaKind::bed, 5, -1, 5.1, 1, 2));
    CHECK(glare().empty());
    site.areas[0].height = Metres(1.4);
    CHECK(glare().size() == 1);
}

TEST_CASE("glare by way of still water") {
    // A downlight 2 m up, 4 m from a viewer with the eye at 2 m; the pond lies half way. Seen mirrored the
    // eye is 4 m down and 4 m away: 45 degrees off plumb, while straight it is level with the lamp.
    Site site = loss_free_site();
    site.fixtures.push_back(light_at("spot", "spot", 0, 0));
    site.fixtures[0].mounting = Metres(2);
    site.fixtures[0].aim.tilt = Degrees(30);
    site.viewpoints.push_back(viewpoint_of("bench", 4, 0, 2));
    site.areas.push_back(area_of("pond", AreaKind::water, 1.5, -1, 2.5, 1));
    const Catalog catalog =
        catalog_of({light_type("spot", FixtureKind::downlight, BeamDistribution{Degrees(36)})});
    const auto glare = [&] { return compute_light(site, catalog, nullptr, {}).value->viewpoints[0].glare; };
    REQUIRE(glare().size() == 1);
    CHECK(glare()[0].mirrored);
    CHECK(glare()[0].angle.value() == Approx(15));
    site.areas[0].outline = {{2.1, -1}, {3, -1}, {3, 1}, {2.1, 1}}; // the mirror point is not on the water
    CHECK(glare().empty());
}
