#include "rillwatt/text/explain_text.hpp"

#include <catch2/catch.hpp>

#include "support/sample_assessment.hpp"

using namespace rillwatt;
using Catch::Matchers::Contains;

namespace {

std::string explained(const Assessment& garden, const std::string& id, std::size_t result = 0) {
    const auto text = explain_text(garden, garden.solution.cases.at(result), id, {});
    REQUIRE(text);
    return *text;
}

} // namespace

TEST_CASE("a lamp is explained length by length, with table, ohms, amperes and load model") {
    const std::string text = explained(samples::small_garden(), "falls-1");
    CHECK_THAT(text, Contains("falls-1: sub-3w on run A of T1  site.toml:70"));
    CHECK_THAT(text, Contains("A: 13 V x 0.6600 A = 8.5800 VA"));
    CHECK_THAT(text, Contains("13 V x (1 - 0.04 x 13.6200 / 150) = 12.9000 V"));
    CHECK_THAT(text, Contains("A to H1: 40 ft of 12/2, as typed"));
    CHECK_THAT(text, Contains("one conductor 1.98 ohm/kft at 75 C: NFPA 70 (2017) chapter 9\n     Table 8"));
    CHECK_THAT(text, Contains("out and back: 2 x 40 ft x 1.98 ohm/kft / 1000 = 0.158400 ohm"));
    CHECK_THAT(text, Contains("carries 0.6600 A: falls-1 0.3300 + falls-2 0.3300"));
    CHECK_THAT(text, Contains("Lead of falls-1: 20 ft of 18/2"));
    CHECK_THAT(text, Contains("constant power, I = VA / V: 4.2 VA / 12.7500 V = 0.3300 A"));
    CHECK_THAT(text, Contains("Reactance is left out"));
    CHECK_THAT(text, Contains("added as if in phase"));
}

TEST_CASE("at another temperature the correction is written out") {
    Assessment garden = samples::small_garden();
    garden.solution.cases[0].conditions.conductor = Celsius(30);
    // 1.98 * (1 + 0.00323 * (30 - 75)) = 1.692207
    CHECK_THAT(explained(garden, "H1"),
               Contains("at 30 C: 1.98 x (1 + 0.00323 x (30 - 75)) = 1.692207 ohm/kft"));
}

TEST_CASE("a length from the plan says that its allowance is in it") {
    CHECK_THAT(explained(samples::small_garden(), "falls-2"),
               Contains("H1 to falls-2: 18.045 ft of 12/2, from the plan, 10 % allowance included"));
}

TEST_CASE("run, splice, transformer, pump and circuit can be explained too") {
    const Assessment garden = samples::small_garden();
    CHECK_THAT(explained(garden, "A"), Contains("A: run from T1"));
    CHECK_THAT(explained(garden, "H1"), Contains("H1: splice on run A of T1"));
    CHECK_THAT(explained(garden, "T1"), Contains("(13.6200 + 4) / 120 = 0.1495 A"));
    CHECK_THAT(explained(garden, "P1"), Contains("C1: 120 V, 20 A breaker, GFCI"));
    CHECK_THAT(explained(garden, "C1"), Contains("pump P1"));
    CHECK_FALSE(explain_text(garden, garden.solution.nominal(), "nowhere", {}));
}

TEST_CASE("without load current nothing drops") {
    CHECK_THAT(explained(samples::small_garden(), "falls-1", 2),
               Contains("tap 13 V x 126 V / 120 V = 13.65 V all along"));
}

TEST_CASE("a circuit without operating point is explained as such") {
    CHECK_THAT(explained(samples::unsolved_garden(), "falls-1"), Contains("With 73 % of"));
}
