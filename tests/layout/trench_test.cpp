#include "rillwatt/layout/trench.hpp"

#include <catch2/catch.hpp>

#include "sketch.hpp"
#include <cmath>

using rillwatt::AreaKind;
using rillwatt::PlanPoint;
using rillwatt::TrenchGround;
using sketch::area;
using sketch::rectangle;

namespace {

rillwatt::Fixture light(std::string id, std::string from, PlanPoint at) {
    rillwatt::Fixture out;
    out.id = std::move(id);
    out.from = std::move(from);
    out.at = at;
    return out;
}

} // namespace

TEST_CASE("two cables side by side lie in one trench") {
    // T(0,0) ---- L1(6,0) ---- L2(10,0): both from T. Cable 16 m, trench 10 m.
    rillwatt::Site plan = sketch::site({0, 0}, {6, 0}, {});
    plan.fixtures.push_back(light("far", "A", {10, 0}));
    const auto lengths = measure_lengths(plan);
    CHECK(trench_length(lengths).value() == Approx(10));
    const auto stretches = trench_stretches(plan, lengths);
    REQUIRE(stretches.size() == 2);
    CHECK(stretches[0].cables == std::vector<std::string>{"light", "far"});
    CHECK(stretches[0].length().value() == Approx(6));
    CHECK(stretches[1].cables == std::vector<std::string>{"far"});
    CHECK(stretches[1].length().value() == Approx(4));
}

TEST_CASE("cables that run in opposite directions share the trench too") {
    rillwatt::Site plan = sketch::site({0, 0}, {10, 0}, {});
    plan.fixtures.push_back(light("back", "light", {4, 0}));
    CHECK(trench_length(measure_lengths(plan)).value() == Approx(10));
}

TEST_CASE("round a slab they meet at its corner and part again") {
    // Both go over (4,3) to (6,3), then one to (10,0), one to (10,3).
    //   trench: 5 + 2 + 5 + 4 = 16; cables: 12 + 11
    rillwatt::Site plan = sketch::site({0, 0}, {10, 0}, {area(AreaKind::paving, rectangle(4, -60, 6, 3))});
    plan.fixtures.push_back(light("level", "A", {10, 3}));
    const auto lengths = measure_lengths(plan);
    CHECK(lengths.fixtures[0].length->value() + lengths.fixtures[1].length->value() == Approx(23));
    CHECK(trench_length(lengths).value() == Approx(16));
}

TEST_CASE("cables that only cross do not share") {
    rillwatt::Site plan = sketch::site({0, 0}, {4, 4}, {});
    plan.fixtures.push_back(light("turn", "light", {4, 0}));
    plan.fixtures.push_back(light("cross", "turn", {0, 4}));
    CHECK(trench_length(measure_lengths(plan)).value() == Approx(4 + 2 * std::sqrt(32)));
}

TEST_CASE("digging, pulling, laying in water and cutting are told apart") {
    // 0..3 soil, sleeve 3..7 under the path, 7..9 soil, pond 9..12 with the light at 11.
    rillwatt::Site plan = sketch::site({0, 0}, {11, 0},
                                       {area(AreaKind::paving, rectangle(4, -60, 6, 60), "path"),
                                        area(AreaKind::water, rectangle(9, -2, 12, 2), "pond")},
                                       {sketch::sleeve("S1", {3, 0}, {7, 0})});
    const auto stretches = trench_stretches(plan, measure_lengths(plan));
    CHECK(trench_length(stretches, TrenchGround::soil).value() == Approx(5));
    CHECK(trench_length(stretches, TrenchGround::sleeve).value() == Approx(4));
    CHECK(trench_length(stretches, TrenchGround::water).value() == Approx(2));
    CHECK(trench_length(stretches, TrenchGround::paving).value() == Approx(0));
    plan.sleeves.clear();
    plan.areas[0].outline = rectangle(4, -2, 12, 2);
    plan.areas[1].outline = rectangle(20, 20, 22, 22);
    const auto cut = trench_stretches(plan, measure_lengths(plan));
    CHECK(trench_length(cut, TrenchGround::soil).value() == Approx(4));
    CHECK(trench_length(cut, TrenchGround::paving).value() == Approx(7));
}
