#include "rillwatt/sizing/size.hpp"

#include <catch2/catch.hpp>

#include "large_garden.hpp"
#include "milp.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

SizeResult sized(const Garden& garden, const SizeOptions& options) {
    const auto result =
        size_site(std::make_shared<const Site>(garden.site), garden.catalog, garden.lengths(), options);
    REQUIRE(result);
    return *result.value;
}

SizeOptions per_length() {
    SizeOptions options;
    options.per_length = true;
    return options;
}

} // namespace

// T0 --+-- 0 -- 1 -- 2 -- ... -- 24
//      +-- 0 -- 1 -- 2 -- ... -- 24
//      +-- (four of them)
TEST_CASE("a hundred lamps in four chains are sized length by length with proof") {
    const SizeResult result = sized(test::chained_garden(1, 4, 25), per_length());
    CHECK(result.status == SizeStatus::optimal);
    CHECK(result.lower_bound->value() == result.cost->value());
}

TEST_CASE("a cable for each length never costs more than one for each run") {
    for (unsigned seed = 1; seed <= 12; ++seed) {
        CAPTURE(seed);
        const Garden garden = seed <= 4 ? test::chained_garden(1, 1 + static_cast<int>(seed), 12)
                                        : test::large_garden(60, 2, seed);
        const SizeResult by_run = sized(garden, {});
        const SizeResult by_length = sized(garden, per_length());
        REQUIRE(by_run.cost);
        REQUIRE(by_length.cost);
        CHECK(by_length.cost->value() <= by_run.cost->value() + 1e-9);
        CHECK(by_length.lower_bound->value() <= by_length.cost->value());
    }
}

TEST_CASE("an effort that runs out leaves a choice that works and a bound below it") {
    const Garden garden = test::chained_garden(2, 4, 25);
    SizeOptions hasty = per_length();
    hasty.effort = 1000;
    const SizeResult result = sized(garden, hasty);
    const SizeResult thorough = sized(garden, per_length());
    CHECK(result.status == SizeStatus::feasible);
    CHECK(result.lower_bound->value() <= thorough.cost->value() + 1e-9);
    CHECK(result.cost->value() >= thorough.lower_bound->value() - 1e-9);
    CHECK(result.gap() > 0);
}

// Constant-current lamps are searched with labels and bounds of their own kind; one lamp of another kind and
// the whole run is searched as any other. Any order takes fewer lengths, every seventh typed makes it harder.
TEST_CASE(
    "a glimmer whose current rises with its volts changes nothing of what constant-current lamps cost") {
    constexpr double glimmer_metres = 0.001;
    const struct {
        int lengths;
        bool any_order;
        bool typed_some;
    } rows[] = {{60, false, false}, {60, false, true}, {30, true, false}, {30, true, true}};
    int optimal = 0;
    for (const auto& row : rows)
        for (unsigned seed = 2; seed <= 5; ++seed) {
            CAPTURE(row.lengths, row.any_order, row.typed_some, seed);
            SizeOptions options = per_length();
            options.any_order = row.any_order;
            Garden steady = test::constant_current_garden(row.lengths, seed);
            for (std::size_t i = 3; row.typed_some && i < steady.site.fixtures.size(); i += 7)
                steady.site.fixtures[i].cable = "8/2";
            Garden mixed = steady;
            mixed.lamp_type("glimmer", {.load = LoadModel::filament, .va = 1e-6});
            mixed.catalog.fixtures["glimmer"].window_low = Volts(10.2);
            mixed.catalog.fixtures["glimmer"].window_high = Volts(15);
            mixed.fixture("dim", "n0", glimmer_metres, "glimmer", "16/2");
            const SizeResult expected = sized(steady, options);
            const SizeResult found = sized(mixed, options);
            CHECK(found.status == expected.status);
            if (!expected.cost || !found.cost) continue;
            optimal += expected.status == SizeStatus::optimal;
            const double glimmer = glimmer_metres * steady.catalog.cables.at("16/2").price->value();
            CHECK(found.cost->value() - glimmer == Approx(expected.cost->value()).margin(1e-4).epsilon(0));
        }
    CHECK(optimal >= 14);
}

//                 +-- x: wants the most volts at p
// A --- 50 m --- p
//                +-- 5 m -- y1 -- 5 m -- y
//
// Thick, then thin serves y for 3 less than middling twice, on the same volts; but the 50 m would have to be
// thick too.
TEST_CASE(
    "a cheaper branch that wants no more volts, but a thicker cable in front, does not rule out the other") {
    Garden garden;
    const struct {
        const char* id;
        double ohms_per_metre; // invented, like all of this garden
        double price;
    } cables[] = {{"thin", 0.0045, 1}, {"middling", 0.003, 2}, {"thick", 0.0015, 2.4}};
    double section = 1;
    for (const auto& row : cables) {
        garden.cable(row.id, row.ohms_per_metre);
        CableType& type = garden.catalog.cables[row.id];
        type.ampacity = Amperes(50);
        type.price = MoneyPerMetre(row.price);
        type.section_mm2 = section++;
        type.direct_burial = true;
    }
    garden.ideal_transformer("T").run("A", "T", 14, "");
    garden.catalog.transformers["type of T"].secondary_limit = Amperes(50);
    garden.lamp_type("small", {.load = LoadModel::constant_current, .va = 12});
    garden.lamp_type("large", {.load = LoadModel::constant_current, .va = 60});
    garden.catalog.fixtures["small"].window_low = Volts(12.17);
    garden.catalog.fixtures["large"].window_low = Volts(11.85);
    for (const char* id : {"small", "large"})
        garden.catalog.fixtures[id].window_high = Volts(15);
    garden.splice("p", "A", 50).fixture("x", "p", 1, "small");
    garden.splice("y1", "p", 5).fixture("y", "y1", 5, "large");
    const SizeResult result = sized(garden, per_length());
    CHECK(result.status == SizeStatus::optimal);
    REQUIRE(result.cost);
    CHECK(result.cost->value() == Approx(50 * 2 + 1 + 10 * 2).margin(1e-6).epsilon(0));
}
