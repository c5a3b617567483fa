#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/exchange/circuits_json.hpp"
#include "rillwatt/pages/electrician_page.hpp"
#include "rillwatt/site/read_site.hpp"
#include "rillwatt/text/circuits_text.hpp"

#include <catch2/catch.hpp>

#include "pages/headless_browser.hpp"
#include "support/paths.hpp"

using namespace rillwatt;

namespace {

Assessment assess_text(const std::string& site_text, const std::string& catalog_text = {}) {
    auto site = read_site(site_text, "site.toml");
    REQUIRE(site);
    auto catalog = read_built_in_catalog();
    REQUIRE(catalog);
    if (!catalog_text.empty()) {
        catalog = read_catalog(catalog_text, "stock.toml", std::move(*catalog.value));
        REQUIRE(catalog);
    }
    REQUIRE(check_catalog(*catalog.value).empty());
    auto result = assess(std::make_shared<const Site>(std::move(*site.value)),
                         std::make_shared<const Catalog>(std::move(*catalog.value)));
    REQUIRE(result);
    return std::move(*result.value);
}

Assessment example() {
    const std::string folder = std::string(RILLWATT_SOURCE_DIR) + "/examples/fernhollow";
    return assess_text(test::file_text(folder + "/site.toml"), test::file_text(folder + "/stock.toml"));
}

std::string html_of(const Assessment& assessment) { return electrician_html(electrician_sheet(assessment)); }

std::string message_of(const Assessment& assessment) {
    return electrician_text(electrician_sheet(assessment));
}

std::string proposal_of(const Assessment& assessment) {
    return circuits_text(*assessment.site, propose_circuits(*assessment.site, assessment.mains), {});
}

std::string proposal_json(const Assessment& assessment) {
    return circuits_json(*assessment.site, propose_circuits(*assessment.site, assessment.mains));
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// Names that a page, a terminal or a spreadsheet must never take for anything but text.
const char* const hostile_site = R"(rillwatt = 1
[site]
name = "<script>document.title='hit'</script>"
[[circuit]]
id = "=cmd|'/c calc'!A1 <img src='http://127.0.0.1:9/hit'>"
[[pump]]
id = "</td></table><script src='http://127.0.0.1:9/x.js'></script>"
model = "pump-180w"
circuit = "=cmd|'/c calc'!A1 <img src='http://127.0.0.1:9/hit'>"
[[transformer]]
id = "T\"onmouseover=\"x"
model = "mag-300"
control = "\u001b[31m<style>@import 'http://127.0.0.1:9/x.css';</style>"
)";

} // namespace

TEST_CASE("the sheet of the example holds what an electrician prices from") {
    const std::string html = html_of(example());
    for (const char* part :
         {"Pump circuits", "Lighting circuits", "Low-voltage supplies", "20 A", "GFCI",
          "12 AWG; ground 12 AWG", "74 ft", "direct-burial under lawn", "24 in; least 24 in", "licence",
          "licensed electrician", "680.51(A)", "Table 300.5", "680.23(A)(2)", "680.54",
          "photocell on, timer off at 23:00", "as planned", "from catalog", "kWh a year"}) {
        CAPTURE(part);
        CHECK(has(html, part));
    }
    CHECK(html.find("Pump circuits") < html.find("Lighting circuits"));
    CHECK(html.find("planning aids") < html.find("Pump circuits")); // cautions come first
}

TEST_CASE("every row of the sheet names its source") {
    const auto assessment = example();
    const auto sheet = electrician_sheet(assessment);
    for (const auto& table : sheet.tables)
        for (const auto& row : table.rows) {
            CAPTURE(table.title, row.what);
            CHECK_FALSE(row.source.empty());
            CHECK(row.cells.size() == table.columns.size());
        }
    for (const auto& line : sheet.open)
        CHECK_FALSE(line.source.empty());
}

TEST_CASE("pumps and lights stand in tables of their own") {
    for (const auto& table : electrician_sheet(example()).tables) {
        CAPTURE(table.title);
        for (const auto& row : table.rows)
            for (const auto& cell : row.cells) {
                if (table.title == "Pump circuits" && row.what == "feeds")
                    CHECK_FALSE(has(cell, "transformer"));
                if (table.title == "Lighting circuits" && row.what == "feeds")
                    CHECK_FALSE(has(cell, "pump "));
            }
    }
}

TEST_CASE("what is open is proposed and marked so, and stays on the list of what is open") {
    const auto assessment = assess_text(R"(rillwatt = 1
[site]
name = "open"
[[circuit]]
id = "C1"
[[pump]]
id = "P1"
model = "pump-180w"
circuit = "C1"
[[pump]]
id = "P2"
model = "pump-180w"
)");
    const std::string text = message_of(assessment);
    CHECK(has(text, "breaker: 15 A (proposed)"));
    CHECK(has(text, "pumps-1 (proposed)"));
    CHECK(has(text, "WHAT STAYS OPEN"));
    CHECK(has(text, "C1: proposed here, not seen on the site"));
    CHECK(has(text, "C1: the way from panel to outlet is to be measured"));
    CHECK_FALSE(has(text, "not judged for C1")); // every value it wants is proposed, or asked for once
}

TEST_CASE("the sheet gives the contact limit of the code the site goes by") {
    const auto sheet = [](const char* code) {
        return message_of(assess_text(std::string("rillwatt = 1\n[site]\nname = \"x\"\ncode = \"") + code +
                                      "\"\n[[transformer]]\nid = \"T\"\nmodel = \"pool-100\"\n"));
    };
    CHECK(has(sheet("nec"), "contact limit 15 V"));
    CHECK(has(sheet("iec"), "contact limit 12 V"));
}

TEST_CASE("what a proposal cannot answer stays on the list") {
    const std::string text = message_of(assess_text(R"(rillwatt = 1
[site]
name = "open"
[[circuit]]
id = "C1"
gfci = true
conductor = "12 AWG"
wiring = "pvc"
[[transformer]]
id = "T1"
circuit = "C1"
)"));
    CHECK(has(text, "a load on it has no model"));
    CHECK_FALSE(has(text, "12 AWG copper, ")); // written, so nothing to confirm
}

TEST_CASE("the longest way is rounded down, not told to the inch") {
    // 2.1 A at 120 V and 3 %: some 500 ft of 12 AWG; the exact figure is the rule's, not the reader's
    const auto assessment =
        assess_text("rillwatt = 1\n[site]\nname = \"x\"\n[[circuit]]\nid = \"C1\"\ngfci = true\n"
                    "conductor = \"12 AWG\"\n[[pump]]\nid = \"P1\"\nmodel = \"pump-180w\"\n"
                    "circuit = \"C1\"\n");
    CHECK(has(message_of(assessment), "12 AWG up to 580 ft;"));
    CHECK(has(proposal_of(assessment), "580 ft"));
    CHECK_FALSE(has(proposal_of(assessment), "584"));
}

TEST_CASE("the text for a message has short lines and the cautions first") {
    const std::string text = message_of(example());
    std::size_t begin = 0;
    while (begin < text.size()) {
        const std::size_t end = text.find('\n', begin);
        CHECK(end - begin <= 64);
        begin = end + 1;
    }
    CHECK(text.find("! These figures") < text.find("PUMP CIRCUITS"));
}

TEST_CASE("hostile names stay text in the page, the message and the proposal") {
    const auto assessment = assess_text(hostile_site);
    const std::string html = html_of(assessment);
    CHECK_FALSE(has(html, "<script"));
    CHECK_FALSE(has(html, "<img"));
    CHECK_FALSE(has(html, "<style>@import"));
    CHECK_FALSE(has(html, "\x1b"));
    CHECK(has(html, "&lt;script&gt;document.title=&#39;hit&#39;&lt;/script&gt;"));
    CHECK_FALSE(has(message_of(assessment), "\x1b"));
    CHECK_FALSE(has(proposal_of(assessment), "\x1b"));
    CHECK_FALSE(has(proposal_json(assessment), "\x1b"));
}

TEST_CASE("in a browser the hostile page runs nothing and asks nobody", "[browser]") {
    const test::HeadlessBrowser browser(html_of(assess_text(hostile_site)));
    const std::string dom = browser.dom();
    REQUIRE(has(dom, "</html>"));
    CHECK_FALSE(has(dom, "<title>hit"));
    CHECK_FALSE(has(dom, "<script"));
    CHECK_FALSE(has(dom, "<img"));
    CHECK_FALSE(has(browser.network_log(), "127.0.0.1:9"));
}

TEST_CASE("printed, the example's sheet is at most two pages on letter and on A4", "[browser]") {
    const std::string html = html_of(example());
    for (const char* paper : {"letter", "A4"}) {
        CAPTURE(paper);
        std::string sized = html;
        const std::string margin = "@page { margin: 10mm; }";
        REQUIRE(has(sized, margin));
        sized.replace(sized.find(margin), margin.size(),
                      "@page { margin: 10mm; size: " + std::string(paper) + "; }");
        const int pages = test::HeadlessBrowser(sized).printed_pages();
        CHECK(pages >= 1);
        CHECK(pages <= 2);
    }
}

TEST_CASE("the page needs nothing but itself") {
    const std::string html = html_of(example());
    for (const char* part :
         {"<script", "src=", "href=", "url(", "@import", "http:", "https:", "<link", "<iframe"}) {
        CAPTURE(part);
        CHECK_FALSE(has(html, part));
    }
}

TEST_CASE("running cost says with numbers that pump hours matter more than all lamps") {
    const auto lines = running_cost_lines(example());
    REQUIRE(lines.size() == 3);
    // By hand: 240 W * 16 h * 365 + 65 W * 24 h * 365 = 1401.6 + 569.4 = 1971 kWh, at 0.17 335.07.
    CHECK(lines[0] == "pumps 1971 kWh a year, 335.07 USD");
    // An hour less each: 0.240 * 365 + 0.065 * 365 = 111.325 kWh, 18.93.
    CHECK(has(lines[2], "111 kWh a year, 18.93 USD"));
}

TEST_CASE("the proposal of the example keeps what is written and lists every crossing") {
    const std::string text = proposal_of(example());
    CHECK(has(text, "PUMP CIRCUITS"));
    CHECK(has(text, "LIGHTING CIRCUITS"));
    CHECK_FALSE(has(text, "(proposed)"));
    CHECK(has(text, "under driveway"));
    const std::string json = proposal_json(example());
    for (const char* key :
         {"\"schema\": \"rillwatt/1\"", "\"command\": \"circuits\"", "\"design_amps\"", "\"burial\""}) {
        CAPTURE(key);
        CHECK(has(json, key));
    }
}
