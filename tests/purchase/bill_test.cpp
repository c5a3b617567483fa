#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/check/assessment.hpp"
#include "rillwatt/purchase/bill.hpp"
#include "rillwatt/site/read_site.hpp"

#include <catch2/catch.hpp>

namespace rillwatt {

namespace {

const char* const catalog_text = R"(rillwatt_catalog = 1
source = "made for this test"
[conductor_table.t]
source = "made for this test"
reference_temperature = "75 C"
temperature_coefficient = 0.00323
unit = "ohm/kft"
sizes = { "12 AWG" = 1.98, "10 AWG" = 1.24 }
[cable.cut]
table = "t"
size = "12 AWG"
ampacity = 20
direct_burial = true
price_per_foot = 0.50
[cable.spooled]
table = "t"
size = "10 AWG"
ampacity = 30
direct_burial = true
price_per_foot = 1.00
spools = ["100 ft", "250 ft"]
[fixture.lamp]
kind = "path"
rated_volts = 12
window = [9, 15]
watts = 3
rating = "wet"
price = 40
[transformer.t]
va = 300
taps = [12]
price = 200
[accessory.connector]
use = "splice"
price = 2
[accessory.stake]
use = "fixture-stake"
)";

// T - A (cut) - 40 ft - hub - 10 ft - p1
//                           - 10 ft - p2
//   - B (spooled) - 60 ft - p3 - 60 ft - p4     120 ft in all: one 250 ft spool holds both pieces, and so do
//   two of
//                                               100 ft, which are 50 ft less
const char* const site_text = R"(rillwatt = 1
[site]
name = "bill"
[[transformer]]
id = "T"
model = "t"
[[run]]
id = "A"
from = "T"
tap = 12
cable = "cut"
[[run]]
id = "B"
from = "T"
tap = 12
cable = "spooled"
[[splice]]
id = "hub"
from = "A"
length = "40 ft"
[[fixture]]
id = "p1"
model = "lamp"
from = "hub"
length = "10 ft"
[[fixture]]
id = "p2"
model = "lamp"
from = "hub"
length = "10 ft"
[[fixture]]
id = "p3"
model = "lamp"
from = "B"
length = "60 ft"
[[fixture]]
id = "p4"
model = "lamp"
from = "p3"
length = "60 ft"
)";

struct Made {
    std::shared_ptr<const Catalog> catalog;
    Assessment assessment;
};

Made make(const std::string& text = site_text) {
    LoadResult<Catalog> catalog = read_catalog(catalog_text, "catalog.toml");
    REQUIRE(catalog);
    REQUIRE(check_catalog(*catalog.value).empty());
    LoadResult<Site> site = read_site(text, "site.toml");
    REQUIRE(site);
    auto shared = std::make_shared<const Catalog>(std::move(*catalog.value));
    LoadResult<Assessment> assessed = assess(std::make_shared<const Site>(std::move(*site.value)), shared);
    REQUIRE(assessed);
    return {shared, std::move(*assessed.value)};
}

const BillLine* line_for(const Bill& bill, const std::string& item) {
    for (const BillLine& line : bill.lines)
        if (line.item == item) return &line;
    return nullptr;
}

} // namespace

TEST_CASE("the bill counts cable by the foot and by the spool, lights, transformers and joints") {
    const Made made = make();
    const Assessment& a = made.assessment;
    const Bill bill = make_bill(*a.site, *a.catalog, a.lengths, a.circuits);

    REQUIRE(line_for(bill, "cut") != nullptr);
    CHECK(line_for(bill, "cut")->quantity == Approx(60).epsilon(1e-12));
    CHECK(line_for(bill, "cut")->cost->value() == Approx(30).epsilon(1e-12));
    REQUIRE(line_for(bill, "spooled") != nullptr);
    CHECK(line_for(bill, "spooled")->quantity == 2);
    CHECK(line_for(bill, "spooled")->unit == "spool");
    CHECK(line_for(bill, "spooled")->cost->value() == Approx(200).epsilon(1e-12));
    CHECK(line_for(bill, "lamp")->quantity == 4);
    CHECK(line_for(bill, "t")->cost->value() == 200);
    CHECK(line_for(bill, "connector")->quantity == 5); // one splice and four lights
    CHECK(line_for(bill, "stake")->quantity == 4);
    CHECK_FALSE(line_for(bill, "stake")->cost.has_value());
    CHECK(bill.unpriced == std::vector<std::string>{"stake"});
    CHECK(bill.total.value() == Approx(30 + 200 + 4 * 40 + 200 + 5 * 2).epsilon(1e-12));
}

TEST_CASE("a piece longer than any spool is bought at its length, and said") {
    std::string text = site_text;
    text.replace(text.rfind("60 ft"), 5, "260 ft");
    const Assessment a = make(text).assessment;
    const Bill bill = make_bill(*a.site, *a.catalog, a.lengths, a.circuits);
    std::vector<std::string> bought;
    double cost = 0;
    for (const BillLine& line : bill.lines) {
        if (line.item != "spooled") continue;
        bought.push_back(line.description);
        cost += line.cost->value();
    }
    CHECK(bought == std::vector<std::string>{"cable, spool of 100 ft", "cable, special spool of 260 ft"});
    CHECK(cost == Approx(100 + 260).epsilon(1e-12));
    REQUIRE(bill.remarks.size() == 1);
    CHECK_THAT(bill.remarks.front(), Catch::Contains("B-2: longer than any spool of spooled"));
}

TEST_CASE("warning tape is counted where the crew digs, not on the bottom of a pond nor in a sleeve") {
    // T 0,0 --- 10 m of lawn --- edge of the pond --- 5 m of water --- light
    //       --- lawn 4 m --- paving 4 to 6, sleeve through it --- lawn 2 m --- light at 0,8
    LoadResult<Catalog> catalog =
        read_catalog(std::string(catalog_text) + "[accessory.tape]\nuse = \"trench-tape-metre\"\n"
                                                 "price = 0.16\n",
                     "catalog.toml");
    REQUIRE(catalog);
    REQUIRE(check_catalog(*catalog.value).empty());
    LoadResult<Site> site = read_site(R"(rillwatt = 1
[site]
name = "tape"
units = "m"
cable_allowance_percent = 0
[[transformer]]
id = "T"
model = "t"
at = [0, 0]
[[run]]
id = "A"
from = "T"
tap = 12
cable = "cut"
[[fixture]]
id = "wet"
model = "lamp"
from = "A"
at = [15, 0]
[[fixture]]
id = "dry"
model = "lamp"
from = "A"
at = [0, 8]
[[area]]
id = "pond"
kind = "water"
outline = [[10, -5], [20, -5], [20, 5], [10, 5]]
[[area]]
id = "walk"
kind = "paving"
outline = [[-50, 4], [50, 4], [50, 6], [-50, 6]]
[[sleeve]]
id = "S"
between = [[0, 4], [0, 6]]
)",
                                      "site.toml");
    for (const InputError& error : site.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(site);
    const LoadResult<Assessment> a = assess(std::make_shared<const Site>(std::move(*site.value)),
                                            std::make_shared<const Catalog>(std::move(*catalog.value)));
    REQUIRE(a);
    const Bill bill = make_bill(*a.value->site, *a.value->catalog, a.value->lengths, a.value->circuits);
    REQUIRE(line_for(bill, "tape") != nullptr);
    CHECK(line_for(bill, "tape")->quantity == Approx(10 + 4 + 2));
    CHECK(line_for(bill, "cut")->quantity == Approx(15 + 8));
}

TEST_CASE("every piece of cable is cut once, with a tag of its run") {
    const Made made = make();
    const CutPlan cuts = plan_cuts(*made.assessment.site, made.assessment.circuits);
    REQUIRE(cuts.pieces.size() == 5);
    CHECK(cuts.pieces[0].tag == "A-1");
    CHECK(cuts.pieces[0].from == "A");
    CHECK(cuts.pieces[0].to == "hub");
    CHECK(cuts.pieces[4].tag == "B-2");

    std::vector<int> times(cuts.pieces.size(), 0);
    for (const CableStock& stock : cuts.stock) {
        Metres used;
        for (const std::size_t piece : stock.pieces) {
            ++times[piece];
            used += cuts.pieces[piece].length;
        }
        CHECK((used + stock.rest).value() == Approx(stock.length.value()).epsilon(1e-12));
    }
    CHECK(times == std::vector<int>(cuts.pieces.size(), 1));
}

} // namespace rillwatt
