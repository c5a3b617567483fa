#include "rillwatt/layout/outline_check.hpp"

#include <catch2/catch.hpp>

#include "sketch.hpp"

using Catch::Matchers::Contains;
using rillwatt::AreaKind;
using sketch::area;

namespace {

std::vector<rillwatt::InputError> faults(sketch::Outline outline) {
    rillwatt::Site plan = sketch::site({0, 0}, {1, 1}, {area(AreaKind::lawn, std::move(outline), "bank")});
    plan.areas[0].location = {"garden.toml", 12};
    return check_outlines(plan);
}

} // namespace

TEST_CASE(
    "sound outlines: convex, concave, clockwise, repeated points, a ring with a slit, a pinched waist") {
    CHECK(faults(sketch::rectangle(0, 0, 4, 3)).empty());
    CHECK(faults({{0, 0}, {0, 3}, {4, 3}, {4, 0}}).empty());
    CHECK(faults({{0, 0}, {6, 0}, {6, 4}, {5, 4}, {5, 1}, {1, 1}, {1, 4}, {0, 4}}).empty());
    CHECK(faults({{0, 0}, {4, 0}, {4, 0}, {4, 3}, {0, 3}, {0, 0}}).empty());
    CHECK(faults({{0, 0},
                  {10, 0},
                  {10, 10},
                  {0, 10},
                  {0, 5},
                  {4, 5},
                  {4, 6},
                  {6, 6},
                  {6, 4},
                  {4, 4},
                  {4, 5},
                  {0, 5}})
              .empty());
    CHECK(faults({{0, 0}, {2, 1}, {4, 0}, {4, 3}, {2, 1}, {0, 3}}).empty());
}

TEST_CASE("two swapped points make a bow tie: the error names area, line, place and sides") {
    const auto errors = faults({{0, 0}, {4, 0}, {0, 3}, {4, 3}});
    REQUIRE(errors.size() == 1);
    CHECK(errors[0].location.line == 12);
    CHECK(errors[0].location.file == "garden.toml");
    CHECK(errors[0].found == "the outline of area `bank` crosses itself at [2, 1.5]: side [4, 0] to [0, 3] "
                             "and side [4, 3] to [0, 0]");
}

TEST_CASE("a bow tie that crosses in a corner of its own is found too") {
    const auto errors = faults({{0, 0}, {4, 0}, {2, 1.5}, {0, 3}, {4, 3}, {2, 1.5}});
    REQUIRE(errors.size() == 1);
    CHECK_THAT(errors[0].found, Contains("crosses itself"));
}

TEST_CASE("points on one line have no inside") {
    const auto errors = faults({{0, 0}, {4, 0}, {2, 0}});
    REQUIRE(errors.size() == 1);
    CHECK_THAT(errors[0].found, Contains("no inside"));
}

TEST_CASE("every faulty area is reported, not just the first") {
    const rillwatt::Site plan = sketch::site({0, 0}, {1, 1},
                                             {area(AreaKind::water, {{0, 0}, {4, 0}, {0, 3}, {4, 3}}, "pond"),
                                              area(AreaKind::paving, sketch::rectangle(0, 0, 1, 1)),
                                              area(AreaKind::bed, {{0, 0}, {4, 0}, {0, 3}, {4, 3}}, "bed")});
    CHECK(check_outlines(plan).size() == 2);
}
