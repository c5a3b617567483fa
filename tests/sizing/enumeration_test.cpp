#include <catch2/catch.hpp>

#include "bill_cost.hpp"
#include "enumeration.hpp"
#include "random_garden.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;
using rillwatt::test::GardenShape;

namespace {

/// Counts over all gardens of one kind, so that a kind in which nothing ever works does not pass unnoticed.
struct Tally {
    int works = 0;
    int hopeless = 0;
};

Tally compare(const GardenShape& shape, const SizeOptions& options, unsigned first_seed, int gardens) {
    Tally tally;
    for (unsigned seed = first_seed; seed < first_seed + static_cast<unsigned>(gardens); ++seed) {
        const Garden garden = test::random_garden(shape, seed);
        const auto site = std::make_shared<const Site>(garden.site);
        const auto sized = size_site(site, garden.catalog, garden.lengths(), options);
        const auto expected = test::cheapest_by_enumeration(garden, options);
        CAPTURE(seed);
        REQUIRE(sized);
        if (!expected && !sized.value->beyond_strong.empty()) {
            ++tally.hopeless; // what nothing keeps on a strong supply is given up
            continue;
        }
        if (!expected) {
            ++tally.hopeless;
            CHECK(sized.value->status == SizeStatus::infeasible);
            CHECK_FALSE(sized.value->cost);
            continue;
        }
        ++tally.works;
        REQUIRE(sized.value->cost);
        CHECK(sized.value->cost->value() == Approx(*expected).margin(0.001).epsilon(0));
        CHECK(sized.value->status == SizeStatus::optimal);
        CHECK(test::billed(garden, *sized.value->sized) == Approx(*expected).margin(0.001).epsilon(0));
        CHECK(sized.value->lower_bound->value() == sized.value->cost->value());
    }
    return tally;
}

} // namespace

TEST_CASE("one cable per run: the same optimum as trying everything") {
    const struct {
        const char* what;
        GardenShape shape;
        int gardens;
        int works;
    } rows[] = {
        {"one transformer, coupled runs", {.most_runs = 3, .most_lengths = 4}, 120, 40},
        {"windows a high tap breaks", {.most_runs = 2, .narrow_windows = true}, 120, 40},
        {"all four load models", {.most_runs = 2, .mixed_loads = true}, 120, 40},
        {"mixed loads in narrow windows",
         {.most_runs = 2, .mixed_loads = true, .narrow_windows = true},
         120,
         20},
        {"steady loads", {.most_runs = 3, .steady_loads = true}, 80, 25},
        {"spools over two transformers", {.transformers = 2, .most_runs = 2, .spools = true}, 100, 30},
        {"three transformers", {.transformers = 3, .most_runs = 2, .spools = true}, 40, 10},
        {"some of it typed", {.transformers = 2, .spools = true, .typed_some = true}, 120, 30},
        {"prices out of order", {.most_runs = 3, .spools = true, .rising_prices = false}, 80, 20},
    };
    for (const auto& row : rows) {
        CAPTURE(row.what);
        const Tally tally = compare(row.shape, {}, 1, row.gardens);
        INFO(tally.works << " work, " << tally.hopeless << " do not");
        CHECK(tally.works >= row.works);
    }
}

TEST_CASE("a cable for each length: the same optimum as trying everything") {
    const struct {
        const char* what;
        GardenShape shape;
        bool any_order;
        int gardens;
        int works;
    } rows[] = {
        {"one run", {.most_runs = 1, .most_lengths = 6}, false, 40, 15},
        {"one run, any order", {.most_runs = 1, .most_lengths = 5}, true, 40, 15},
        {"coupled runs", {.most_runs = 2, .most_lengths = 3}, false, 40, 15},
        {"windows a high tap breaks", {.most_runs = 2, .narrow_windows = true}, false, 40, 15},
        {"windows a high tap breaks, any order",
         {.most_runs = 1, .most_lengths = 5, .narrow_windows = true},
         true,
         80,
         25},
        {"all four load models", {.most_runs = 2, .mixed_loads = true}, false, 40, 15},
        {"spools", {.most_runs = 2, .spools = true}, false, 30, 8},
        {"spools over two transformers, any order",
         {.transformers = 2, .most_runs = 1, .most_lengths = 4, .spools = true},
         true,
         40,
         10},
        {"mixed loads in narrow windows",
         {.most_runs = 2, .mixed_loads = true, .narrow_windows = true},
         false,
         40,
         5},
        {"mixed loads in narrow windows from spools",
         {.most_runs = 2, .most_lengths = 4, .spools = true, .mixed_loads = true, .narrow_windows = true},
         false,
         60,
         5},
        {"some of it typed", {.most_runs = 2, .spools = true, .typed_some = true}, false, 40, 10},
        {"steady loads", {.most_runs = 1, .most_lengths = 6, .steady_loads = true}, false, 80, 25},
        {"steady loads, any order", {.most_runs = 1, .most_lengths = 5, .steady_loads = true}, true, 80, 25},
        {"steady loads, prices out of order",
         {.most_runs = 1, .most_lengths = 6, .cables = 4, .steady_loads = true, .rising_prices = false},
         false,
         120,
         40},
        {"steady loads on coupled runs", {.most_runs = 2, .steady_loads = true}, false, 40, 15},
        {"steady loads, some of it typed",
         {.most_runs = 2, .most_lengths = 4, .steady_loads = true, .typed_some = true},
         false,
         60,
         15},
        {"steady loads in narrow windows",
         {.most_runs = 2, .steady_loads = true, .narrow_windows = true},
         false,
         40,
         10},
        {"steady loads from spools", {.most_runs = 2, .spools = true, .steady_loads = true}, false, 40, 10},
    };
    for (const auto& row : rows) {
        CAPTURE(row.what);
        SizeOptions options;
        options.per_length = true;
        options.any_order = row.any_order;
        const Tally tally = compare(row.shape, options, 1000, row.gardens);
        INFO(tally.works << " work, " << tally.hopeless << " do not");
        CHECK(tally.works >= row.works);
    }
}

TEST_CASE("a garden with a ring: the same optimum as trying everything") {
    const struct {
        const char* what;
        GardenShape shape;
        bool per_length;
        int gardens;
        int works;
    } rows[] = {
        {"round one run", {.most_runs = 1, .most_lengths = 4, .ring = true}, false, 60, 15},
        {"across two runs", {.most_runs = 2, .ring = true}, false, 60, 15},
        {"some of it typed", {.most_runs = 2, .typed_some = true, .ring = true}, false, 60, 15},
        {"spools", {.most_runs = 2, .spools = true, .ring = true}, false, 40, 10},
        {"a cable for each length", {.most_runs = 1, .most_lengths = 3, .ring = true}, true, 40, 10},
        {"a cable for each length, some typed",
         {.most_runs = 1, .most_lengths = 4, .typed_some = true, .ring = true},
         true,
         40,
         10},
    };
    for (const auto& row : rows) {
        CAPTURE(row.what);
        SizeOptions options;
        options.per_length = row.per_length;
        const Tally tally = compare(row.shape, options, 3000, row.gardens);
        INFO(tally.works << " work, " << tally.hopeless << " do not");
        CHECK(tally.works >= row.works);
    }
}

TEST_CASE("a weak and a strong supply count too: the same optimum as trying everything") {
    const struct {
        const char* what;
        GardenShape shape;
        bool per_length;
        double margin;
        int gardens;
        int works;
    } rows[] = {
        {"constant power", {.transformers = 2, .most_runs = 2, .warm = true}, false, 0, 150, 40},
        {"coupled runs", {.most_runs = 3, .most_lengths = 4}, false, 0, 150, 40},
        {"all four load models", {.transformers = 2, .mixed_loads = true, .warm = true}, false, 0, 150, 40},
        {"filaments and resistances",
         {.most_runs = 3, .rising_loads = true, .warm = true},
         false,
         0,
         100,
         30},
        {"constant current", {.transformers = 2, .steady_loads = true, .warm = true}, false, 0, 150, 40},
        {"a margin too", {.most_runs = 2, .steady_loads = true}, false, 0.4, 100, 30},
        {"narrow windows", {.most_runs = 2, .mixed_loads = true, .narrow_windows = true}, false, 0, 200, 10},
        {"some of it typed", {.transformers = 2, .typed_some = true}, false, 0, 100, 20},
        {"spools", {.transformers = 2, .spools = true}, false, 0, 100, 20},
        {"a ring", {.most_runs = 2, .warm = true, .ring = true}, false, 0, 60, 10},
        {"each length its own cable", {.most_runs = 2, .warm = true}, true, 0, 60, 15},
        {"the same, constant current", {.steady_loads = true, .warm = true}, true, 0, 60, 15},
        {"the same, a margin too",
         {.most_runs = 1, .most_lengths = 5, .steady_loads = true},
         true,
         0.4,
         60,
         15},
        {"the same, all four load models", {.mixed_loads = true, .warm = true}, true, 0, 60, 15},
    };
    for (const auto& row : rows) {
        CAPTURE(row.what);
        SizeOptions options;
        options.per_length = row.per_length;
        options.margin = Volts(row.margin);
        options.weak_supply = true;
        options.strong_supply = true;
        const Tally tally = compare(row.shape, options, 11000, row.gardens);
        INFO(tally.works << " work, " << tally.hopeless << " do not");
        CHECK(tally.works >= row.works);
    }
}

// Where currents rise with the volts, a fixed-point step towards the transformer's operating point goes past
// it, so that a choice loaded just below the limit may look as if it were above.
TEST_CASE("loaded close to the limit: the same optimum as trying everything") {
    const struct {
        const char* what;
        GardenShape shape;
        bool per_length;
        int gardens;
        int works;
    } rows[] = {
        {"filaments and resistances",
         {.most_runs = 3, .most_lengths = 4, .rising_loads = true},
         false,
         300,
         150},
        {"a cable for each length", {.most_runs = 2, .most_lengths = 3, .rising_loads = true}, true, 100, 50},
        {"all four load models", {.most_runs = 3, .most_lengths = 4, .mixed_loads = true}, false, 300, 100},
        {"constant power", {.most_runs = 3, .most_lengths = 4}, false, 1000, 300},
    };
    for (const auto& row : rows) {
        CAPTURE(row.what);
        Tally tally;
        for (unsigned seed = 1; seed <= static_cast<unsigned>(row.gardens); ++seed) {
            constexpr double distances[] = {1e-6, 1e-4, 0.002, 0.01, -1e-6, -0.002};
            SizeOptions options;
            options.per_length = row.per_length;
            options.loading = loading_of_some_choice(test::random_garden(row.shape, seed), seed) +
                              distances[seed % std::size(distances)];
            if (options.loading < 0.1) continue; // no operating point, or hardly a lamp
            const Tally one = compare(row.shape, options, seed, 1);
            tally.works += one.works;
            tally.hopeless += one.hopeless;
        }
        INFO(tally.works << " work, " << tally.hopeless << " do not");
        CHECK(tally.works >= row.works);
    }
}

// Such a lamp can be fed on its lower root as well, on which no circuit settles.
TEST_CASE("windows that reach below half of the tap: the same optimum as trying everything") {
    for (const bool per_length : {false, true}) {
        CAPTURE(per_length);
        SizeOptions options;
        options.per_length = per_length;
        const Tally tally =
            compare({.most_runs = 2, .mixed_loads = per_length, .low_windows = true}, options, 7000, 60);
        CHECK(tally.works >= 30);
    }
}

TEST_CASE("a margin and a loading of one's own hold too") {
    SizeOptions options;
    options.margin = Volts(0.4);
    options.loading = 0.6;
    const Tally tally =
        compare({.most_runs = 2, .most_lengths = 4, .narrow_windows = true}, options, 5000, 120);
    CHECK(tally.works >= 30);
    options.per_length = true;
    compare({.most_runs = 2}, options, 6000, 60);
}
