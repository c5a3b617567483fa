// What a sizing may take: steps and time count in every stage of it, the explanation of an infeasible site
// and the changes tried for it included. No clock: a counter stands for the time.

#include "rillwatt/sizing/size.hpp"

#include <catch2/catch.hpp>

#include "large_garden.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

/// 400 lamps in ten chains on one transformer: nothing carries them.
Garden hopeless_chains() { return test::chained_garden(1, 10, 40); }

SizeResult sized(const Garden& garden, const SizeOptions& options) {
    const auto result =
        size_site(std::make_shared<const Site>(garden.site), garden.catalog, garden.lengths(), options);
    REQUIRE(result);
    return *result.value;
}

} // namespace

TEST_CASE("when the time is over no stage of a sizing goes on") {
    for (const bool per_length : {false, true}) {
        CAPTURE(per_length);
        for (const int looks : {1, 3, 10}) { // at the clock, until the time is over
            int asked = 0;
            SizeOptions options;
            options.per_length = per_length;
            options.out_of_time = [&] { return ++asked >= looks; };
            const SizeResult result = sized(hopeless_chains(), options);
            CHECK(result.status == SizeStatus::infeasible);
            CHECK(asked <= looks + 12); // each stage looks once more
            if (asked >= looks) CHECK(result.infeasible->suggestion.find("time or effort was used up") == 0);
        }
    }
}

TEST_CASE("the steps of all stages together keep the effort") {
    for (const std::size_t effort : {200'000U, 1'000'000U}) {
        SizeOptions options;
        options.effort = effort;
        const SizeResult result = sized(hopeless_chains(), options);
        REQUIRE(result.infeasible);
        CHECK(result.steps <= effort + effort / 4); // a stage notices at its next look
    }
}
