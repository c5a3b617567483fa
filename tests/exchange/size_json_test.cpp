#include "rillwatt/exchange/size_json.hpp"

#include <catch2/catch.hpp>

#include "support/sample_assessment.hpp"

using namespace rillwatt;
using Catch::Matchers::Contains;

TEST_CASE("what has no price is listed, whether it is missing from the cost or from the bill") {
    SizeReport report;
    report.before = samples::small_garden();
    report.after = samples::small_garden();
    CHECK_THAT(size_json(report), Contains("\"unpriced\": []"));
    report.result.unpriced = {"12/2"};
    report.bill.unpriced = {"12/2", "lamp", "stake"};
    CHECK_THAT(size_json(report), Contains("\"unpriced\": [\"12/2\", \"lamp\", \"stake\"]"));
}
