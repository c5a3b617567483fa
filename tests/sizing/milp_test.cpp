#include "rillwatt/sizing/size.hpp"

#include <catch2/catch.hpp>

#include "milp.hpp"

using namespace rillwatt;

// CBC and GLPK solve the same per-length problem written as a linear program; constant-current lamps and no
// regulation make that program exact.
TEST_CASE("a cable for each length: the same optimum as a mixed-integer solver") {
    const struct {
        int lengths;
        unsigned seed;
        bool glpk;
    } rows[] = {{50, 1, true}, {50, 2, false}, {80, 3, false}, {200, 3, false}};
    SizeOptions options;
    options.per_length = true;
    for (const auto& row : rows) {
        CAPTURE(row.lengths, row.seed);
        const test::Garden garden = test::constant_current_garden(row.lengths, row.seed);
        const auto ours =
            size_site(std::make_shared<const Site>(garden.site), garden.catalog, garden.lengths(), options);
        REQUIRE(ours);
        REQUIRE(ours.value->status == SizeStatus::optimal);
        const std::string program = test::per_length_program(garden);
        const auto cbc = test::solve_with_cbc(program, 120);
        REQUIRE(cbc);
        CHECK(ours.value->cost->value() == Approx(cbc->cost).margin(0.001).epsilon(0));
        if (!row.glpk) continue;
        const auto glpk = test::solve_with_glpk(program, 120);
        REQUIRE(glpk);
        CHECK(ours.value->cost->value() == Approx(glpk->cost).margin(0.001).epsilon(0));
    }
}
