#include <catch2/catch.hpp>

#include "sketch.hpp"
#include <cmath>

using rillwatt::AreaKind;
using rillwatt::PlanPoint;
using sketch::area;
using sketch::metres;
using sketch::rectangle;
using sketch::site;

namespace {

constexpr double tolerance = 1e-9;

const auto patio = [](double l, double b, double r, double t) {
    return area(AreaKind::paving, rectangle(l, b, r, t), "patio");
};

} // namespace

TEST_CASE("nothing in the way: the trench is the straight line, with the allowance on top") {
    rillwatt::Site plan = site({0, 0}, {3, 4}, {});
    CHECK(metres(plan) == Approx(5).margin(tolerance));
    plan.settings.cable_allowance = 0.1;
    const rillwatt::PartLength length = sketch::measured(plan);
    CHECK(length.length->value() == Approx(5.5).margin(tolerance));
    CHECK(length.straight->value() == Approx(5).margin(tolerance));
    CHECK(length.origin == rillwatt::LengthOrigin::plan);
    CHECK(length.route == std::vector<PlanPoint>{{0, 0}, {3, 4}});
}

TEST_CASE("lawn and beds are no obstacles") {
    CHECK(metres(site({0, 0}, {10, 0},
                      {area(AreaKind::lawn, rectangle(2, -3, 4, 3)),
                       area(AreaKind::bed, rectangle(6, -3, 8, 3))})) == Approx(10).margin(tolerance));
}

TEST_CASE("round one slab: by the nearer corners") {
    //        (4,3)----(6,3)
    //  S(0,0)  |  slab  |   L(10,0)        over the top: 5 + 2 + 5 = 12
    //          |        |                  below: 2 * sqrt(4^2 + 6^2) + 2 = 16.4
    //        (4,-6)---(6,-6)
    for (const AreaKind kind : {AreaKind::paving, AreaKind::building, AreaKind::water})
        CHECK(metres(site({0, 0}, {10, 0}, {area(kind, rectangle(4, -6, 6, 3))})) ==
              Approx(12).margin(tolerance));
}

TEST_CASE("the route names its corners") {
    const rillwatt::PartLength length = sketch::measured(site({0, 0}, {10, 0}, {patio(4, -6, 6, 3)}));
    CHECK(length.route == std::vector<PlanPoint>{{0, 0}, {4, 3}, {6, 3}, {10, 0}});
    CHECK(length.straight->value() == Approx(10).margin(tolerance));
}

TEST_CASE("an edge may be followed and a corner touched") {
    SECTION("straight along an edge") {
        CHECK(metres(site({0, 3}, {10, 3}, {patio(4, -6, 6, 3)})) == Approx(10).margin(tolerance));
    }
    SECTION("diagonally past a corner") {
        CHECK(metres(site({0, 0}, {8, 8}, {patio(4, 0, 6, 4)})) ==
              Approx(std::hypot(8, 8)).margin(tolerance));
    }
    SECTION("a hair inside the corner is not touching: 3 mm in, the way bends") {
        const double bent = metres(site({0, 0}, {8, 8}, {patio(4, 0, 6, 4.003)}));
        // Through (4, 4.003): sqrt(16 + 4.003^2) + sqrt(16 + 3.997^2).
        CHECK(bent == Approx(std::hypot(4, 4.003) + std::hypot(4, 3.997)).margin(tolerance));
        CHECK(bent > std::hypot(8, 8));
    }
}

TEST_CASE("the outline may be written either way round, with repeated and collinear points") {
    sketch::Outline outline = rectangle(4, -6, 6, 3);
    std::reverse(outline.begin(), outline.end());
    CHECK(metres(site({0, 0}, {10, 0}, {area(AreaKind::paving, outline)})) == Approx(12).margin(tolerance));
    const sketch::Outline wordy{{4, -6}, {5, -6}, {6, -6}, {6, -6}, {6, 0}, {6, 3},
                                {5, 3},  {4, 3},  {4, 3},  {4, 1},  {4, -6}};
    CHECK(metres(site({0, 0}, {10, 0}, {area(AreaKind::paving, wordy)})) == Approx(12).margin(tolerance));
}

TEST_CASE("into the bay of a concave outline and out again") {
    // A horseshoe open at the top; S stands in its bay, L below it.
    //   (0,4)--(1,4)      (5,4)--(6,4)
    //     |      |   S(3,2) |      |
    //     |    (1,1)------(5,1)    |
    //   (0,0)--------------------(6,0)
    //                L(3,-1)
    // Out over (1,4), along the rim to (0,4), down to (0,0) and on:
    // sqrt(2^2 + 2^2) + 1 + 4 + sqrt(3^2 + 1^2) = 2.828427 + 5 + 3.162278 = 10.990705
    const sketch::Outline horseshoe{{0, 0}, {6, 0}, {6, 4}, {5, 4}, {5, 1}, {1, 1}, {1, 4}, {0, 4}};
    CHECK(metres(site({3, 2}, {3, -1}, {area(AreaKind::building, horseshoe)})) ==
          Approx(std::sqrt(8) + 5 + std::sqrt(10)).margin(tolerance));
}

TEST_CASE("areas that share an edge are one obstacle") {
    SECTION("two slabs side by side: the seam is no way") {
        // Seam at y = 0 right on the straight line.
        CHECK(metres(site({0, 0}, {10, 0}, {patio(4, -6, 6, 0), patio(4, 0, 6, 3)})) ==
              Approx(12).margin(tolerance));
    }
    SECTION("they share only a part of the edge") {
        CHECK(metres(site({0, 0}, {10, 0}, {patio(4, -6, 6, 0), patio(3, 0, 5, 3)})) > 10.5);
        // Over the top: (3,3) is 3 sqrt 2 away, 2 along, then to (10,0) from (5,3): sqrt(25 + 9);
        // but (6,0) does not stand in the way of the last piece: at x = 6 it is at y = 2.4.
        CHECK(metres(site({0, 0}, {10, 0}, {patio(4, -6, 6, 0), patio(3, 0, 5, 3)})) ==
              Approx(std::sqrt(18) + 2 + std::sqrt(34)).margin(tolerance));
    }
    SECTION("a sloping seam, with its points worked out in floating point") {
        // Both slabs have the line from (4, -1/3) to (6, 0.1) as an edge, one of them with a point on it.
        const PlanPoint a{4, -1.0 / 3};
        const PlanPoint b{6, 0.1};
        const PlanPoint between{4 + 2 * 0.37, -1.0 / 3 + 0.37 * (0.1 + 1.0 / 3)};
        const sketch::Outline lower{{4, -6}, {6, -6}, b, a};
        const sketch::Outline upper{a, between, b, {6, 3}, {4, 3}};
        CHECK(metres(site({0, 0}, {10, 0}, {area(AreaKind::paving, lower), area(AreaKind::paving, upper)})) ==
              Approx(12).margin(tolerance));
    }
    SECTION("paving against a building and water against paving are one obstacle too") {
        CHECK(metres(site({0, 0}, {10, 0},
                          {area(AreaKind::building, rectangle(4, -6, 6, 0)),
                           area(AreaKind::water, rectangle(4, 0, 6, 3))})) == Approx(12).margin(tolerance));
    }
    SECTION("a gap of a hand's width is a way") {
        CHECK(metres(site({0, 0.05}, {10, 0.05}, {patio(4, -6, 6, 0), patio(4, 0.1, 6, 3)})) ==
              Approx(10).margin(tolerance));
    }
}

TEST_CASE("a touching corner is a way") {
    //            | upper |
    //            (6,0)---          lower's top right corner is upper's bottom left
    //    --------(6,0)
    //    | lower |
    CHECK(metres(site({4, 2}, {8, -2}, {patio(2, -6, 6, 0), patio(6, 0, 10, 6)})) ==
          Approx(std::sqrt(32)).margin(tolerance));
    // From a place where the line does not go straight through the corner it bends in it.
    CHECK(metres(site({5, 3}, {8, -2}, {patio(2, -6, 6, 0), patio(6, 0, 10, 6)})) ==
          Approx(std::sqrt(10) + std::sqrt(8)).margin(tolerance));
}

TEST_CASE("three slabs round a corner leave the fourth quarter open") {
    // Slabs in three quarters of the cross at (0,0); the way from one side of the gap to the other is in it.
    const std::vector<rillwatt::Area> slabs{patio(-5, 0, 0, 5), patio(-5, -5, 0, 0), patio(0, -5, 5, 0)};
    CHECK(metres(site({0, 4}, {4, 0}, slabs)) == Approx(std::sqrt(32)).margin(tolerance));
    CHECK(metres(site({0, 4}, {0, 0}, slabs)) == Approx(4).margin(tolerance));
}

TEST_CASE("overlapping slabs are one obstacle and their crossing edges no way") {
    // A cross of two slabs; from one inner corner's quarter to the opposite.
    //  L shape round the arm: (2,2) -> ... arms 1 wide, 3 long
    const std::vector<rillwatt::Area> cross{patio(-3, -1, 3, 1), patio(-1, -3, 1, 3)};
    // From (2,2) to (-2,2): over the arm's end at (1,3) and (-1,3): sqrt 2 + 2 + sqrt 2.
    CHECK(metres(site({2, 2}, {-2, 2}, cross)) == Approx(2 + 2 * std::sqrt(2)).margin(tolerance));
}

TEST_CASE("a sleeve is a way and its own length counts") {
    const auto wide = patio(4, -100, 6, 100);
    SECTION("ends that stick out") {
        // 0..3 to the pipe, 4 through it, 3 on.
        CHECK(metres(site({0, 0}, {10, 0}, {wide}, {sketch::sleeve("S1", {3, 0}, {7, 0})})) ==
              Approx(10).margin(tolerance));
    }
    SECTION("ends flush with the edge, off the line") {
        // sqrt(16 + 9) + 2 + sqrt(16 + 9) = 12
        const rillwatt::PartLength length =
            sketch::measured(site({0, 0}, {10, 0}, {wide}, {sketch::sleeve("S1", {4, 3}, {6, 3})}));
        CHECK(length.length->value() == Approx(12).margin(tolerance));
        CHECK(length.route == std::vector<PlanPoint>{{0, 0}, {4, 3}, {6, 3}, {10, 0}});
        CHECK(length.crossed.empty());
    }
    SECTION("it works both ways round and skewed") {
        CHECK(metres(site({0, 0}, {10, 0}, {wide}, {sketch::sleeve("S1", {6, 3}, {4, 0})})) ==
              Approx(4 + std::sqrt(13) + 5).margin(tolerance));
    }
    SECTION("a longer way through a sleeve is not taken") {
        CHECK(metres(site({0, 0}, {10, 0}, {patio(4, -6, 6, 3)}, {sketch::sleeve("S1", {4, -5}, {6, -5})})) ==
              Approx(12).margin(tolerance));
    }
    SECTION("two sleeves one after the other") {
        CHECK(metres(site({0, 0}, {20, 0}, {wide, patio(12, -100, 14, 100)},
                          {sketch::sleeve("S1", {4, 0}, {6, 0}), sketch::sleeve("S2", {14, 0}, {12, 0})})) ==
              Approx(20).margin(tolerance));
    }
    SECTION("the pipe itself may cross anything, also another sleeve") {
        CHECK(metres(site({0, 0}, {10, 0}, {wide, area(AreaKind::building, rectangle(4.5, -1, 5.5, 1))},
                          {sketch::sleeve("S1", {3, 0}, {7, 0}), sketch::sleeve("S2", {5, -2}, {5, 2})})) ==
              Approx(10).margin(tolerance));
    }
}

TEST_CASE("a light in the pond is reached through that pond and no other") {
    const auto pond = area(AreaKind::water, rectangle(4, -2, 8, 2), "pond");
    SECTION("straight in") { CHECK(metres(site({0, 0}, {6, 0}, {pond})) == Approx(6).margin(tolerance)); }
    SECTION("also across the pond when the far side is nearer through it") {
        CHECK(metres(site({0, 0}, {8, 0}, {pond})) == Approx(8).margin(tolerance));
    }
    SECTION("a second pond on the way is gone round") {
        // A pool 1 < x < 3, -3 < y < 1 lies before it: over (1,1) and (3,1): sqrt 2 + 2 + sqrt(9 + 1).
        CHECK(metres(site({0, 0}, {6, 0}, {pond, area(AreaKind::water, rectangle(1, -3, 3, 1), "pool")})) ==
              Approx(std::sqrt(2) + 2 + std::sqrt(10)).margin(tolerance));
    }
    SECTION("from one light in it to another: straight") {
        CHECK(metres(site({5, 0}, {7, 1}, {pond})) == Approx(std::sqrt(5)).margin(tolerance));
    }
    SECTION("from a light in one pond to a light in another through both") {
        CHECK(metres(site({-2, 0}, {6, 0}, {pond, area(AreaKind::water, rectangle(-4, -2, 0, 2), "pool")})) ==
              Approx(8).margin(tolerance));
    }
    SECTION("a pond set in paving needs a sleeve: water is open to its light, the paving round it is not") {
        const auto terrace = patio(3, -3, 9, 3);
        CHECK(metres(site({0, 0}, {6, 0}, {terrace, pond})) == -1);
        CHECK(metres(site({0, 0}, {6, 0}, {terrace, pond}, {sketch::sleeve("S1", {3, 0}, {4, 0})})) ==
              Approx(6).margin(tolerance));
    }
    SECTION("paving that reaches into the water does not bar it: water wins") {
        // The slab covers the pond's left half; only its part outside the pond, 3 < x < 4, -1 < y < 1, bars.
        // Round it by (3,1), then straight to (6,0), over water that the slab covers.
        CHECK(metres(site({0, 0}, {6, 0}, {patio(3, -1, 6, 1), pond})) ==
              Approx(std::sqrt(10) + std::hypot(1, 0) + std::hypot(2, 1)).margin(tolerance));
    }
}

TEST_CASE("a part on an outline is reached freely from outside") {
    SECTION("a transformer on the wall, a light before the same wall") {
        const auto house = area(AreaKind::building, rectangle(0, 0, 10, 6), "house");
        CHECK(metres(site({5, 0}, {5, -4}, {house})) == Approx(4).margin(tolerance));
        CHECK(metres(site({5, 0}, {9, 0}, {house})) == Approx(4).margin(tolerance));
        // To the back wall it goes round: 5 + 6 + 5, and nothing is crossed.
        const rillwatt::PartLength round = sketch::measured(site({5, 0}, {5, 6}, {house}));
        CHECK(round.length->value() == Approx(16).margin(tolerance));
        CHECK(round.crossed.empty());
    }
    SECTION("on a corner") {
        CHECK(metres(site({0, 0}, {4, -3}, {patio(0, 0, 10, 6)})) == Approx(5).margin(tolerance));
    }
    SECTION("on the seam between two slabs a part is shut in and reached through them") {
        const rillwatt::PartLength length =
            sketch::measured(site({5, 0}, {5, -4}, {patio(0, -2, 10, 0), patio(0, 0, 10, 2)}));
        CHECK(length.length->value() == Approx(4).margin(tolerance));
        CHECK(length.crossed == std::vector<std::string>{"patio"});
    }
}

TEST_CASE("an end inside paving or a building is reached through it, and the route says so") {
    const auto slab = patio(4, -2, 8, 2);
    const rillwatt::PartLength length = sketch::measured(site({0, 0}, {6, 0}, {slab}));
    CHECK(length.length->value() == Approx(6).margin(tolerance));
    CHECK(length.crossed == std::vector<std::string>{"patio"});
    SECTION("but not through the slab next to it") {
        // (2..4, -3..1) lies before it: over (2,1), then straight to the light: at x = 4 that is y = 0.5,
        // inside the first slab, so by (4,1): sqrt 5 + 2 + sqrt 5.
        CHECK(metres(site({0, 0}, {6, 0}, {slab, area(AreaKind::paving, rectangle(2, -3, 4, 1), "path")})) ==
              Approx(std::sqrt(5) + 2 + std::sqrt(5)).margin(tolerance));
    }
    SECTION("a transformer in the garage") {
        const rillwatt::PartLength out = sketch::measured(
            site({6, 0}, {0, 0}, {area(AreaKind::building, rectangle(4, -2, 8, 2), "garage")}));
        CHECK(out.crossed == std::vector<std::string>{"garage"});
    }
    SECTION("a sleeve that comes up at the light crosses nothing") {
        const rillwatt::PartLength out =
            sketch::measured(site({0, 0}, {6, 0}, {slab}, {sketch::sleeve("S1", {4, 0}, {6, 0})}));
        CHECK(out.length->value() == Approx(6).margin(tolerance));
    }
    SECTION("a house that stands on the terrace stays shut") {
        // Terrace 4..12 with a house 7..9 on it; light at (11,0). Straight through the house would be 11.
        const rillwatt::PartLength out = sketch::measured(
            site({0, 0}, {11, 0},
                 {patio(4, -2, 12, 2), area(AreaKind::building, rectangle(7, -1, 9, 1), "house")}));
        CHECK(out.length->value() == Approx(std::hypot(7, 1) + 2 + std::hypot(2, 1)).margin(tolerance));
    }
}

TEST_CASE("a typed length is used as it stands, and only the straight line is measured") {
    rillwatt::Site plan = site({0, 0}, {3, 4}, {});
    plan.settings.cable_allowance = 0.1;
    plan.fixtures[0].length = rillwatt::Metres(4);
    const rillwatt::PartLength length = sketch::measured(plan);
    CHECK(length.origin == rillwatt::LengthOrigin::typed);
    CHECK(length.length->value() == 4);
    CHECK(length.straight->value() == Approx(5).margin(tolerance));
    CHECK(length.route.empty());
}

TEST_CASE("without a place at one end or without a feed the length stays open") {
    rillwatt::Site plan = site({0, 0}, {3, 4}, {});
    SECTION("no place") { plan.fixtures[0].at.reset(); }
    SECTION("no feed") { plan.fixtures[0].from.reset(); }
    SECTION("a transformer without a place") { plan.transformers[0].at.reset(); }
    const rillwatt::PartLength length = sketch::measured(plan);
    CHECK(length.origin == rillwatt::LengthOrigin::open);
    CHECK_FALSE(length.length);
    CHECK(length.blocked_by.empty());
}

TEST_CASE("cables go from each feed point: run, splice, fixture, and both ends of a link") {
    rillwatt::Site plan = site({0, 0}, {9, 0}, {});
    rillwatt::Splice hub;
    hub.id = "H";
    hub.from = "A";
    hub.at = PlanPoint{3, 4};
    plan.splices = {hub};
    plan.fixtures[0].from = "H";
    rillwatt::Fixture next = plan.fixtures[0];
    next.id = "next";
    next.from = "light";
    next.at = PlanPoint{9, 2};
    plan.fixtures.push_back(next);
    rillwatt::Link link;
    link.id = "ring";
    link.a = "next";
    link.b = "A";
    plan.links = {link};
    const rillwatt::SiteLengths lengths = measure_lengths(plan);
    CHECK(lengths.splices.at(0).length->value() == Approx(5).margin(tolerance));
    CHECK(lengths.fixtures.at(0).length->value() == Approx(std::hypot(6, 4)).margin(tolerance));
    CHECK(lengths.fixtures.at(1).length->value() == Approx(2).margin(tolerance));
    CHECK(lengths.links.at(0).length->value() == Approx(std::hypot(9, 2)).margin(tolerance));
}

TEST_CASE("two parts at one place need no cable on the plan") {
    CHECK(metres(site({2, 2}, {2, 2}, {patio(0, 0, 1, 1)})) == Approx(0).margin(tolerance));
}

TEST_CASE("roundings of the tape: seams and flush ends written to the hundredth of a foot") {
    SECTION("two slabs whose seam gapes by two millimetres are one obstacle") {
        CHECK(metres(site({0, 0}, {10, 0}, {patio(4, -6, 6, -0.001), patio(4, 0.001, 6, 3)})) ==
              Approx(12).margin(1e-5));
    }
    SECTION("a corner that should lie on its neighbour's sloping side and misses it by 2 mm") {
        const sketch::Outline lower{{4, -6}, {6, -6}, {6, 0.1}, {4, -0.3}};
        const sketch::Outline upper{{4, -0.298}, {5, -0.098}, {6, 0.1}, {6, 3}, {4, 3}};
        CHECK(metres(site({0, 0}, {10, 0}, {area(AreaKind::paving, lower), area(AreaKind::paving, upper)})) ==
              Approx(12).margin(1e-5));
    }
    SECTION("a gap of 5 mm is left as it is") {
        CHECK(metres(site({0, 0}, {10, 0}, {patio(4, -6, 6, -0.0025), patio(4, 0.0025, 6, 3)})) ==
              Approx(10).margin(1e-5));
    }
    SECTION("a sleeve that ends a millimetre under the edge is flush with it") {
        CHECK(metres(site({0, 0}, {10, 0}, {patio(4, -100, 6, 100)},
                          {sketch::sleeve("S1", {4.001, 0}, {5.999, 0})})) == Approx(10).margin(0.005));
    }
    SECTION("a transformer a millimetre inside the wall is on it") {
        const rillwatt::PartLength round = sketch::measured(
            site({5, 0.001}, {5, 6}, {area(AreaKind::building, rectangle(0, 0, 10, 6), "house")}));
        CHECK(round.length->value() == Approx(16).margin(0.005));
        CHECK(round.crossed.empty());
    }
}

TEST_CASE("a ring drawn with a slit: the slit is a seam, not a way") {
    // Outer square 0..10, inner square 4..6, joined by a slit from (0,5) to (4,5) that is walked twice.
    const sketch::Outline ring{{0, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 5}, {4, 5},
                               {4, 6}, {6, 6},  {6, 4},   {4, 4},  {4, 5}, {0, 5}};
    CHECK(metres(site({-5, 5}, {5, 5}, {area(AreaKind::paving, ring)})) == -1);
    CHECK(metres(site({4.5, 5}, {5.5, 5}, {area(AreaKind::paving, ring)})) == Approx(1).margin(tolerance));
}

TEST_CASE("an outline that crosses itself in a corner of its own: both lobes bar, the waist is a way") {
    //   (2,2)---(6,2)
    //      .     .
    //       (4,0)         written as one line through the waist, twice
    //      .     .
    //   (2,-2)--(6,-2)
    const sketch::Outline bow{{2, -2}, {6, -2}, {4, 0}, {2, 2}, {6, 2}, {4, 0}};
    const auto bed = area(AreaKind::paving, bow);
    CHECK(metres(site({0, 0}, {8, 0}, {bed})) == Approx(8).margin(tolerance));
    // Round the outside, by the two corners of one side: sqrt 5 + 4 + sqrt 5.
    CHECK(metres(site({4, -3}, {4, 3}, {bed})) == Approx(4 + 2 * std::sqrt(5)).margin(tolerance));
}
