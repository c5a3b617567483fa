#include <catch2/catch.hpp>

#include "sketch.hpp"

using Catch::Matchers::Contains;
using rillwatt::AreaKind;
using sketch::area;
using sketch::rectangle;

TEST_CASE("a bed walled in by four slabs: the slab with the shortest way under it is named") {
    // Slabs 4 m thick all round but 1 m thick to the east.
    const auto north = area(AreaKind::paving, rectangle(-6, 2, 3, 6), "north");
    const auto south = area(AreaKind::paving, rectangle(-6, -6, 3, -2), "south");
    const auto west = area(AreaKind::paving, rectangle(-6, -2, -2, 2), "west");
    const auto east = area(AreaKind::paving, rectangle(2, -2, 3, 2), "east");
    const auto length = sketch::measured(sketch::site({-20, 0}, {0, 0}, {north, south, west, east}));
    CHECK_FALSE(length.length);
    CHECK(length.origin == rillwatt::LengthOrigin::open);
    CHECK(length.blocked_by == "east");
    CHECK_THAT(length.sleeve_hint, Contains("1.0 m long"));
    CHECK(length.straight->value() == Approx(20));
}

TEST_CASE("a pond set in a terrace: the terrace is in the way, where it is narrowest") {
    const auto terrace = area(AreaKind::paving, rectangle(0, 0, 10, 10), "terrace");
    const auto pond = area(AreaKind::water, rectangle(2, 3, 9.5, 7), "pond");
    const auto length = sketch::measured(sketch::site({-5, 5}, {5, 5}, {terrace, pond}));
    CHECK(length.blocked_by == "terrace");
    CHECK_THAT(length.sleeve_hint, Contains("0.5 m long"));
}

TEST_CASE("a way that would need one more sleeve says where") {
    // A path right across with a sleeve under it, then a pond in a terrace without one.
    const auto first = area(AreaKind::paving, rectangle(2, -100, 3, 100), "first");
    const auto terrace = area(AreaKind::paving, rectangle(5, -3, 9, 3), "terrace");
    const auto pond = area(AreaKind::water, rectangle(5.8, -2, 8, 2), "pond");
    const auto length = sketch::measured(
        sketch::site({0, 0}, {7, 0}, {first, terrace, pond}, {sketch::sleeve("S1", {2, 0}, {3, 0})}));
    CHECK(length.blocked_by == "terrace");
    CHECK_THAT(length.sleeve_hint, Contains("0.8 m long"));
}

TEST_CASE("a sleeve that ends short of the edge is pointed out") {
    const auto terrace = area(AreaKind::paving, rectangle(0, 0, 10, 10), "terrace");
    const auto pond = area(AreaKind::water, rectangle(2, 3, 8, 7), "pond");
    const auto length = sketch::measured(
        sketch::site({-5, 5}, {5, 5}, {terrace, pond}, {sketch::sleeve("S1", {0.25, 5}, {2, 5})}));
    CHECK_FALSE(length.length);
    CHECK_THAT(length.sleeve_hint, Contains("sleeve `S1` ends inside `terrace`"));
}

TEST_CASE("a gap of up to 3 mm counts as closed, and whoever finds no way is told so") {
    const auto walled_in = [](double gap) {
        const auto west = area(AreaKind::paving, rectangle(-6, -6, -2, 6), "west");
        const auto middle = area(AreaKind::paving, rectangle(-2, 2, 2, 6), "north");
        const auto south = area(AreaKind::paving, rectangle(-2, -6, 2, -2), "south");
        const auto east = area(AreaKind::paving, rectangle(2 + gap, -6, 6, 6), "east");
        return sketch::measured(sketch::site({-20, 0}, {0, 0}, {west, middle, south, east}));
    };
    const double widest = rillwatt::widest_closed_gap.value();
    CHECK(widest == 0.003); // common practice, no source
    const auto closed = walled_in(widest * 0.9);
    CHECK_FALSE(closed.length);
    CHECK_THAT(closed.sleeve_hint, Contains("gaps of up to 3 mm between areas count as closed"));
    CHECK(walled_in(widest * 1.5).length);
    const auto touching = walled_in(0);
    CHECK_FALSE(touching.length);
    CHECK_THAT(touching.sleeve_hint, !Contains("count as closed"));
}
