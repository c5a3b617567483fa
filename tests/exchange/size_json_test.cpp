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

TEST_CASE("the errors and warnings of the site as sized are listed by rule and part") {
    SizeReport report;
    report.before = samples::small_garden();
    report.after = samples::small_garden();
    report.after.findings.clear();
    CHECK_THAT(size_json(report), Contains("\"warned\": []"));
    Finding finding;
    finding.rule = "lamp-undervoltage";
    finding.part = "path-2";
    finding.message = "path-2 gets 8.90 V";
    report.after.findings = {finding}; // a note
    CHECK_THAT(size_json(report), Contains("\"warned\": []"));
    report.after.findings[0].severity = Severity::warning;
    CHECK_THAT(size_json(report),
               Contains("{ \"rule\": \"lamp-undervoltage\", \"part\": \"path-2\", \"message\": "
                        "\"path-2 gets 8.90 V\" }"));
    report.result.infeasible.emplace(); // nothing was chosen
    CHECK_THAT(size_json(report), Contains("\"warned\": []"));
}
