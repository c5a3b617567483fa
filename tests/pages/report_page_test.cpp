#include "rillwatt/exchange/tables_csv.hpp"
#include "rillwatt/pages/report_page.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/text/check_text.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "support/sample_assessment.hpp"

using namespace rillwatt;
using Catch::Matchers::Contains;

namespace {

CablePiece piece(const std::string& tag, const std::string& from, const std::string& to, Metres length) {
    CablePiece made;
    made.tag = tag;
    made.run = "A";
    made.cable = "12/2";
    made.from = from;
    made.to = to;
    made.length = length;
    return made;
}

CutPlan two_pieces(const std::string& last) {
    CutPlan cuts;
    cuts.pieces = {piece("A-1", "A", "H1", feet(40)), piece("A-2", "H1", last, feet(15))};
    CableStock spool;
    spool.cable = "12/2";
    spool.length = feet(100);
    spool.pieces = {0, 1};
    spool.rest = feet(45);
    cuts.stock = {spool};
    return cuts;
}

Bill one_line_bill() {
    BillLine line;
    line.item = "sub-3w";
    line.kind = BillKind::fixture;
    line.quantity = 2;
    line.unit = "piece";
    line.price = Money(48);
    line.cost = Money(96);
    Bill bill;
    bill.lines = {line};
    bill.total = Money(96);
    bill.unpriced = {"<old> well"};
    return bill;
}

std::string page_of(const Assessment& garden) {
    SiteReport report = report_site(garden);
    report.cuts = two_pieces(garden.site->fixtures[0].id);
    report.bill = one_line_bill();
    return report_page({report, "", "", ""});
}

} // namespace

TEST_CASE("the page tells what is wrong, what to buy and what to do next") {
    const std::string page = page_of(samples::small_garden());
    CHECK_THAT(page, Contains("What is wrong") && Contains("What to buy") && Contains("What to do next"));
    CHECK_THAT(page, Contains("falls-1 gets 8.72 V, below its window of 9 to 15 V."));
    CHECK_THAT(page, Contains("2 pieces") && Contains("96.00 USD"));
    CHECK_THAT(page, Contains("licensed electrician"));
}

TEST_CASE("a page says that nothing is found against a garden only where nothing is warned of") {
    Assessment garden = samples::small_garden();
    CHECK_THAT(page_of(garden), Contains(">do not build yet<"));
    garden.findings[0].severity = Severity::warning;
    CHECK_THAT(page_of(garden),
               Contains("decide on the warnings before you build") && !Contains("nothing against it"));
    for (Finding& finding : garden.findings)
        finding.severity = Severity::note;
    CHECK_THAT(page_of(garden),
               Contains(">the rules find nothing against it<") && !Contains("before you build"));
}

TEST_CASE("findings about light are counted apart, for a check does not judge light") {
    Assessment garden = samples::small_garden();
    CHECK_THAT(page_of(garden), !Contains("about light, which"));
    garden.findings[1].rule = "glare";
    garden.findings[2].rule = "view-blocked";
    CHECK_THAT(page_of(garden), Contains("1 error, 1 warning, 1 note, 2 of them about light, which"));
    CHECK_THAT(check_text(garden, {}), Contains("are judged by `rillwatt light`"));
}

TEST_CASE("every lamp carries its id for marking, its volts and its place in the window") {
    const std::string page = page_of(samples::small_garden());
    CHECK_THAT(page, Contains("<tr data-part=\"path-2\"><th scope=\"row\"><a href=\"#plan\">path-2</a>"));
    CHECK_THAT(page, Contains("11.90 V<span class=\"sub\">weak&nbsp;11.25, strong&nbsp;12.60</span>"));
    // 16 + 68 * (11.9 - 9) / (15 - 9) = 48.87
    CHECK_THAT(page, Contains("<line class=\"mark\" x1=\"48.87\" x2=\"48.87\""));
}

TEST_CASE("the cut list says which spool each piece comes from, and prints two tags for it") {
    const std::string page = page_of(samples::small_garden());
    CHECK_THAT(page, Contains("A-1 (40 ft), A-2 (15 ft)") && Contains("45 ft"));
    CHECK_THAT(page, Contains("<b>A-2</b>feed end at H1") && Contains("<b>A-2</b>far end at falls-1"));
}

TEST_CASE("a circuit without operating point leaves out what it has no figures for") {
    const std::string page = page_of(samples::unsolved_garden());
    CHECK_THAT(page, !Contains("id=\"commissioning\"") && !Contains("id=\"loads\""));
    CHECK_THAT(page, Contains("no figure"));
}

TEST_CASE("lights in water are measured where their lead joins the cable, and no hand goes into the water") {
    const Assessment garden = samples::small_garden();
    const std::string page = page_of(garden);
    const std::string sheet = page.substr(page.find("id=\"commissioning\""));
    CHECK_THAT(sheet, Contains("No hand and no meter lead in the water") &&
                          Contains("C1: trips by its test button"));
    for (const LampResult& lamp : garden.solution.nominal().lamps) {
        const std::string& id = garden.site->fixtures[lamp.fixture].id;
        INFO(id);
        const std::string row = sheet.substr(sheet.find("data-part=\"" + id), 300);
        const bool wet = id.starts_with("falls");
        CHECK_THAT(row, Contains(wet ? "out of the water" : "at the lamp") &&
                            Contains(volts_text(wet ? lamp.splice_volts : lamp.volts)));
    }
}

TEST_CASE("hostile names stay text in the page and in the tables") {
    const Assessment garden = samples::hostile_garden();
    const std::string page = page_of(garden);
    CHECK(page.find("<script>alert") == std::string::npos);
    CHECK(page.find("<img") == std::string::npos);
    CHECK(page.find('\x1b') == std::string::npos);
    CHECK(page.find("\xe2\x80\xae") == std::string::npos); // no turning of the direction of writing
    CHECK(page.find("<b>\xff") == std::string::npos);
    CHECK_THAT(page, Contains("&lt;old&gt; well"));
    CHECK(lamps_csv(*garden.site, lamp_rows(garden)).find("\n\"'=1+1") != std::string::npos);
    CHECK(cut_list_csv(*garden.site, two_pieces(garden.site->fixtures[0].id)).find(",\"'=1+1") !=
          std::string::npos);
}

TEST_CASE("the lamp table for spreadsheets has a record for each lamp") {
    const Assessment garden = samples::small_garden();
    const std::string table = lamps_csv(*garden.site, lamp_rows(garden));
    CHECK_THAT(table, Contains("falls-2,sub-3w,A,T1,13,12.75,12.1,13.65,9,15,2.25,0.33,1.923,good\r\n"));
    CHECK(std::count(table.begin(), table.end(), '\n') == 5);
}
