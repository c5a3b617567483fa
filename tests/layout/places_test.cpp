#include "rillwatt/layout/places.hpp"

#include <catch2/catch.hpp>

#include "sketch.hpp"
#include <cmath>

using rillwatt::AreaKind;
using rillwatt::PlanPoint;
using sketch::area;
using sketch::rectangle;

TEST_CASE("inside, on the outline and outside") {
    const rillwatt::Area ell = area(AreaKind::water, {{0, 0}, {4, 0}, {4, 1}, {1, 1}, {1, 4}, {0, 4}});
    struct Row {
        PlanPoint at;
        bool covered;
    };
    for (const Row& row : std::vector<Row>{{{0.5, 3}, true},
                                           {{2, 0.5}, true},
                                           {{2, 1}, true},       // on an edge
                                           {{1, 1}, true},       // on the inner corner
                                           {{4, 0}, true},       // on an outer corner
                                           {{2, 1.001}, false},  // a millimetre out
                                           {{2, 2}, false},      // in the bay
                                           {{5, 0}, false},      // level with a corner
                                           {{-0.001, 2}, false}, // a millimetre out
                                           {{0.001, 2}, true}}) {
        INFO(row.at.x << ", " << row.at.y);
        CHECK(covers(ell, row.at) == row.covered);
    }
}

TEST_CASE("a light is in water as written, else by the plan, else not") {
    const rillwatt::Site plan =
        sketch::site({0, 0}, {5, 5}, {area(AreaKind::water, rectangle(4, 4, 6, 6), "pond")});
    rillwatt::Fixture light = plan.fixtures[0];
    CHECK(in_water(plan, light));
    light.in_water = false;
    CHECK_FALSE(in_water(plan, light));
    light.in_water.reset();
    light.at.reset();
    CHECK_FALSE(in_water(plan, light));
    light.in_water = true;
    CHECK(in_water(plan, light));
}

TEST_CASE("where paving lies over a pond the place is in the pond") {
    const rillwatt::Site plan = sketch::site({0, 0}, {5, 5},
                                             {area(AreaKind::paving, rectangle(0, 0, 9, 9)),
                                              area(AreaKind::water, rectangle(4, 4, 6, 6), "pond")});
    REQUIRE(water_at(plan, {5, 5}));
    CHECK(water_at(plan, {5, 5})->id == "pond");
    CHECK(water_at(plan, {2, 2}) == nullptr);
}

TEST_CASE("distance to water is to the nearest outline, nothing inside, unknown without water") {
    const rillwatt::Site plan = sketch::site(
        {0, 0}, {5, 5},
        {area(AreaKind::water, rectangle(4, 4, 6, 6)), area(AreaKind::water, rectangle(20, 0, 30, 10))});
    CHECK(distance_to_water(plan, {5, 1})->value() == Approx(3));
    CHECK(distance_to_water(plan, {3, 3})->value() == Approx(std::sqrt(2.0)));
    CHECK(distance_to_water(plan, {5, 5})->value() == 0);
    CHECK(distance_to_water(plan, {6, 5})->value() == 0);
    CHECK(distance_to_water(plan, {17, 5})->value() == Approx(3));
    CHECK_FALSE(distance_to_water(sketch::site({0, 0}, {1, 1}, {}), {5, 5}).has_value());
}
