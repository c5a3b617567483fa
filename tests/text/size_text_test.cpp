#include "rillwatt/text/size_text.hpp"
#include "rillwatt/text/utf8.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "support/sample_assessment.hpp"

using namespace rillwatt;
using Catch::Matchers::Contains;

namespace {

Finding finding(const char* rule, Severity severity, const std::string& part) {
    Finding made;
    made.rule = rule;
    made.severity = severity;
    made.part = part;
    made.message = part + " is not as it should be";
    return made;
}

/// Something was chosen for the sample garden, and these findings are there before and after.
SizeReport chosen(std::vector<Finding> before, std::vector<Finding> after) {
    SizeReport report;
    report.before = samples::small_garden();
    report.after = samples::small_garden();
    report.before.findings = std::move(before);
    report.after.findings = std::move(after);
    report.result.status = SizeStatus::optimal;
    report.result.cost = Money(100);
    report.result.choices = {{"A", "cable", "12/2", {}, {}, {}}};
    return report;
}

std::string first_lines(const std::string& text, int count) {
    std::size_t end = 0;
    for (int line = 0; line < count && end < text.size(); ++line)
        end = text.find('\n', end) + 1;
    return text.substr(0, end);
}

} // namespace

TEST_CASE("what check warns of with the choices in place is told in the first lines") {
    const auto high = finding("lamp-overvoltage", Severity::warning, "falls-1");
    const auto near = finding("near-water", Severity::error, "T1");
    const auto remark = finding("joint-in-water", Severity::note, "falls-2");
    SECTION("with the id of its rule; a note is none of it") {
        const std::string head = first_lines(size_text(chosen({}, {high, remark}), {}), 15);
        CHECK_THAT(head, Contains("With these choices `rillwatt check` finds 1 warning:\n"
                                  "  warning: falls-1 is not as it should be [lamp-overvoltage]\n"));
        CHECK_THAT(head, !Contains("joint-in-water"));
    }
    SECTION("what the choices bring comes before what was typed") {
        CHECK_THAT(first_lines(size_text(chosen({high}, {high, near}), {}), 15),
                   Contains("finds 1 error, 1 warning (1 before too):\n"
                            "  error: T1 is not as it should be [near-water]\n"
                            "  warning: falls-1 is not as it should be [lamp-overvoltage]\n"));
    }
    SECTION("nothing is said where nothing is found, and where nothing works") {
        CHECK_THAT(size_text(chosen({high}, {remark}), {}), !Contains("`rillwatt check` finds"));
        SizeReport nothing = chosen({high}, {high});
        nothing.result.status = SizeStatus::infeasible;
        nothing.result.infeasible.emplace();
        CHECK_THAT(size_text(nothing, {}), !Contains("`rillwatt check` finds"));
    }
    SECTION("where all was typed the choices are not blamed") {
        SizeReport typed = chosen({high}, {high});
        typed.result.choices.clear();
        CHECK_THAT(size_text(typed, {}), Contains("\nAs typed `rillwatt check` finds 1 warning:\n"));
    }
}

TEST_CASE("the warnings of a sizing take a line each, and no more than a few") {
    std::vector<Finding> many;
    for (int i = 1; i <= 4; ++i)
        many.push_back(finding("lamp-undervoltage", Severity::warning, fmt::format("path-{}", i)));
    CHECK_THAT(size_text(chosen({}, many), {}), Contains("path-4 is") && !Contains("more\n"));
    many.push_back(finding("lamp-undervoltage", Severity::warning, "path-5"));
    many.push_back(finding("lamp-undervoltage", Severity::warning, "path-6"));
    many.front().message += ", as a sentence says that would not end within the columns of a line";
    const std::string head = first_lines(size_text(chosen({}, many), {}), 15);
    CHECK_THAT(head, Contains("finds 6 warnings:\n"));
    CHECK_THAT(head, Contains("… [lamp-undervoltage]\n  warning: path-2 "));
    CHECK_THAT(head, Contains("path-4 is not as it should be [lamp-undervoltage]\n  and 2 more\n"));
    for (std::size_t at = 0; at < head.size(); at = head.find('\n', at) + 1)
        CHECK(display_width(head.substr(at, head.find('\n', at) - at)) <= 80);
}
