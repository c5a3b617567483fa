// What sizing says beside the numbers: what binds, what would be cheaper, what would help, what to cut.

#include "rillwatt/purchase/bill.hpp"
#include "rillwatt/sizing/headroom.hpp"
#include "rillwatt/sizing/size.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "support/garden.hpp"
#include <algorithm>

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

/// A cable of so many ohms on a metre out and back, at a price of its own.
void sell(Garden& garden, const std::string& id, double ohms_per_metre, double price) {
    garden.cable(id, ohms_per_metre / 2);
    CableType& type = garden.catalog.cables[id];
    type.section_mm2 = 1 / ohms_per_metre;
    type.price = MoneyPerMetre(price);
    type.direct_burial = true;
}

void lamp(Garden& garden, const std::string& id, double amps, double low, double high) {
    garden.lamp_type(id, {.load = LoadModel::constant_current, .va = 12 * amps});
    garden.catalog.fixtures[id].window_low = Volts(low);
    garden.catalog.fixtures[id].window_high = Volts(high);
}

SizeResult sized(const Garden& garden, const SizeOptions& options = {}) {
    auto result =
        size_site(std::make_shared<const Site>(garden.site), garden.catalog, garden.lengths(), options);
    REQUIRE(result);
    return *result.value;
}

SizeReason reason_of(const SizeResult& result, const std::string& part) {
    const auto found = std::find_if(result.reasons.begin(), result.reasons.end(),
                                    [&](const SizeReason& reason) { return reason.part == part; });
    REQUIRE(found != result.reasons.end());
    return *found;
}

/// Everything offered to one who cannot be served, the first as suggestion.
std::vector<std::string> ways_of(const SizeResult& result) {
    REQUIRE(result.infeasible);
    std::vector<std::string> ways{result.infeasible->suggestion};
    ways.insert(ways.end(), result.infeasible->other_ways.begin(), result.infeasible->other_ways.end());
    return ways;
}

bool offers(const std::vector<std::string>& ways, const std::string& beginning) {
    return std::any_of(ways.begin(), ways.end(),
                       [&](const std::string& way) { return way.starts_with(beginning); });
}

// 10 A at 30 m of 0.02 ohm/m: 6 V of drop. A run on the 12 V tap leaves 6 V of the 7 V needed.
Garden six_volts_short() {
    Garden garden;
    garden.transformer("T1", 300, 0, {12, 13}).run("A", "T1", 12, "");
    sell(garden, "c", 0.02, 1);
    lamp(garden, "lamp", 10, 7, 15);
    garden.fixture("L", "A", 30, "lamp");
    return garden;
}

} // namespace

//  T1 --A-- 10 m -- low -- 10 m -- high     1 A each, thick 0.02 ohm/m: 0.4 V to low, 0.2 V on to high
TEST_CASE("the lamp that binds a run is the one nearest to either end of its window") {
    const struct {
        double low_end, high_end;
        const char* binds;
    } rows[] = {
        {11.0, 15.0, "near binds: 11.60 V, 11.00 V is its least"},
        {9.0, 11.5, "far binds: 11.40 V, 11.50 V is its most"},
        {9.0, 15.0, "near binds: 11.60 V, 9.00 V is its least"},
    };
    for (const auto& row : rows) {
        CAPTURE(row.low_end, row.high_end);
        Garden garden;
        garden.ideal_transformer("T1").run("A", "T1", 12, "");
        sell(garden, "c", 0.02, 1);
        lamp(garden, "near lamp", 1, row.low_end, 15);
        lamp(garden, "far lamp", 1, 8.5, row.high_end);
        garden.fixture("near", "A", 10, "near lamp").fixture("far", "near", 10, "far lamp");
        CHECK(reason_of(sized(garden), "A").binds == row.binds);
    }
}

TEST_CASE("the next cheaper cable is named with what it would break") {
    // 10 m of 0.02, 0.03 and 0.06 ohm/m with 10 A: 10, 9 and 6 V at the lamp, which needs 9.5
    Garden garden;
    garden.ideal_transformer("T1").run("A", "T1", 12, "");
    sell(garden, "thin", 0.06, 1);
    sell(garden, "middle", 0.03, 2);
    sell(garden, "thick", 0.02, 3);
    lamp(garden, "lamp", 10, 9.5, 15);
    garden.fixture("L", "A", 10, "lamp");
    const SizeResult result = sized(garden);
    CHECK(result.sized->runs[0].cable == "thick");
    CHECK(reason_of(result, "A").cheaper == "middle would leave L 9.00 V of 9.50 V");
    garden.catalog.fixtures["lamp"].window_low = Volts(5);
    CHECK(reason_of(sized(garden), "A").cheaper.empty());
}

TEST_CASE("the next smaller transformer is named with the load it would have") {
    // 100 VA of lamps without loss; 80 % of 125 VA is 100 VA
    for (const bool smallest_too : {false, true}) {
        CAPTURE(smallest_too);
        Garden garden;
        for (const double va : {60.0, 120.0, 130.0}) {
            if (va == 60 && !smallest_too) continue;
            garden.transformer(fmt::format("{}", va), va, 0, {12});
            garden.catalog.transformers[fmt::format("type of {}", va)].price = Money(va);
        }
        garden.site.transformers.resize(1);
        garden.site.transformers[0].id = "T1";
        garden.site.transformers[0].model.reset();
        garden.site.runs.clear();
        sell(garden, "c", 1e-9, 1);
        lamp(garden, "lamp", 100.0 / 12, 9, 15);
        Run run;
        run.id = "A";
        run.from = "T1";
        garden.site.runs.push_back(run);
        garden.fixture("L", "A", 10, "lamp");
        const SizeReason reason = reason_of(sized(garden), "T1");
        CHECK(reason.binds == "loaded to 77 % of 130 VA, the limit is 80 %");
        CHECK(reason.cheaper == "type of 120 would be loaded to 83 % of 80 %");
    }
}

// No drop to speak of: at nominal supply every tap from 10 to 14 V keeps the lamp in its window of 9 to 15 V.
// Supply 5 % low and high: a tap t leaves 0.95 t - 9 below and 15 - 1.05 t above; the lesser of the two is
// greatest where they meet, at t = 12.
TEST_CASE("of taps that cost the same the one with most room on a weak and a strong supply is chosen") {
    const std::vector<double> taps{10, 11, 12, 13, 14};
    for (const double ends : {0.0, 1.0, -1.0}) { // the window moved up and down
        CAPTURE(ends);
        Garden garden;
        garden.transformer("T1", 300, 0, taps).run("A", "T1", 12, "").run("B", "T1", 12, "");
        for (Run& run : garden.site.runs)
            run.tap.reset();
        sell(garden, "c", 1e-9, 1);
        lamp(garden, "lamp", 1, 9 + ends, 15 + ends);
        garden.fixture("L", "A", 1, "lamp").fixture("M", "B", 1, "lamp");
        const auto room = [&](double tap) { return std::min(0.95 * tap - 9 - ends, 15 + ends - 1.05 * tap); };
        const double best = *std::max_element(taps.begin(), taps.end(),
                                              [&](double a, double b) { return room(a) < room(b); });
        const SizeResult result = sized(garden);
        CHECK(result.sized->runs[0].tap == Volts(best));
        CHECK(result.sized->runs[1].tap == Volts(best));
    }
}

TEST_CASE("what was typed is reopened only when asked for") {
    Garden garden;
    garden.transformer("small", 100, 0, {12}).transformer("large", 300, 0, {12, 13});
    garden.catalog.transformers["type of small"].price = Money(100);
    garden.catalog.transformers["type of large"].price = Money(300);
    garden.site.transformers.erase(garden.site.transformers.begin());
    garden.run("A", "large", 13, "thick");
    sell(garden, "thin", 0.02, 1);
    sell(garden, "thick", 0.01, 2);
    lamp(garden, "lamp", 1, 9, 15);
    garden.splice("S", "A", 10, "thick").fixture("L", "S", 10, "lamp", "thick");
    CHECK(sized(garden).cost->value() == Approx(300 + 2 * 20));
    SizeOptions all;
    all.all = true;
    const SizeResult result = sized(garden, all);
    CHECK(result.cost->value() == Approx(100 + 1 * 20));
    CHECK(result.sized->transformers[0].model == "type of small");
    CHECK(result.sized->runs[0].tap == Volts(12));
    CHECK(result.sized->runs[0].cable == "thin");
    CHECK(garden.site.transformers[0].model == "type of large");
}

TEST_CASE("a transformer with an open length, of a part or of a link, is left out and named") {
    Garden garden = six_volts_short();
    garden.catalog.fixtures["lamp"].window_low = Volts(5);
    CHECK(sized(garden).left_out.empty());
    garden.link("ring", "A", "L", 5, "c");
    CHECK(sized(garden).left_out.empty());
    garden.site.links[0].length.reset();
    CHECK(sized(garden).left_out == std::vector<std::string>{"T1"});
    garden.site.links.clear();
    garden.site.fixtures[0].length.reset();
    CHECK(sized(garden).left_out == std::vector<std::string>{"T1"});
}

TEST_CASE("a tap is offered with its volts, and nothing is offered twice") {
    const auto ways = ways_of(sized(six_volts_short()));
    CHECK(ways.front() == "tap 13 V on A, instead of what is typed");
    CHECK(std::count(ways.begin(), ways.end(), ways.front()) == 1);
    // 25 m would do: 5 V of drop
    CHECK(offers(ways, "make the way from A to L shorter by 5 m (it is 30 m)"));
    CHECK_FALSE(offers(ways, "split")); // one lamp cannot be split
}

TEST_CASE("what a part has already is left out of what to change") {
    Garden garden = six_volts_short();
    garden.run("B", "T1", 13, "c"); // needs its 13 V and has them
    lamp(garden, "choosy", 0.1, 12.2, 15);
    garden.fixture("M", "B", 1, "choosy");
    CHECK(ways_of(sized(garden)).front() == "tap 13 V on A, instead of what is typed");
}

TEST_CASE("a link without a cable to choose from is told") {
    for (const bool stocked : {false, true}) { // a cable that may not be buried is none to choose from
        CAPTURE(stocked);
        Garden garden;
        garden.ideal_transformer("T1").run("A", "T1", 12, "c");
        sell(garden, "c", 0.02, 1);
        sell(garden, "indoor", 0.02, 1);
        garden.catalog.cables["indoor"].direct_burial = false;
        lamp(garden, "lamp", 1, 9, 15);
        garden.splice("S", "A", 5, "c").fixture("L", "S", 10, "lamp", "c").link("ring", "A", "L", 5, "");
        garden.site.stock.cables.emplace();
        if (stocked) garden.site.stock.cables->emplace_back("indoor");
        const SizeResult result = sized(garden);
        REQUIRE(result.infeasible);
        CHECK(result.infeasible->reason == "no priced cable for direct burial in catalogs or [stock] for T1");
        CHECK(offers(ways_of(result), "cable c on ring, which the catalogs have"));
    }
}

// 31 runs are well served, one is not. Four taps on 32 runs make 2 to the 64 ways to choose them.
TEST_CASE("what is wrong is found among more taps than can be counted") {
    for (const int runs : {31, 32, 33}) {
        CAPTURE(runs);
        Garden garden;
        garden.transformer("T1", 1000, 0, {12, 13, 14, 15});
        sell(garden, "c", 0.02, 1);
        lamp(garden, "lamp", 0.1, 9, 16);
        lamp(garden, "hungry", 0.1, 15.5, 16);
        for (int r = 0; r < runs; ++r) {
            garden.run(fmt::format("A{}", r), "T1", 12, "c");
            garden.site.runs.back().tap.reset();
            garden.fixture(fmt::format("L{}", r), fmt::format("A{}", r), 1, r == 5 ? "hungry" : "lamp");
        }
        const SizeResult result = sized(garden);
        REQUIRE(result.infeasible);
        CHECK(result.infeasible->part == "L5");
        CHECK(result.infeasible->reason.starts_with("with everything at its best L5 gets 15.00 V"));
    }
}

TEST_CASE("where no single typed value is to blame, all of them may be") {
    // 30 m at 10 A need 13 V and 0.02 ohm/m at once; typed are 12 V and 0.03 ohm/m
    Garden garden = six_volts_short();
    garden.catalog.transformers["type of T1"].price = Money(100);
    sell(garden, "thin", 0.03, 0.5);
    garden.site.runs[0].cable = "thin";
    const auto ways = ways_of(sized(garden));
    CHECK(offers(ways, "let `rillwatt size --all` choose what is typed as well"));
    CHECK_FALSE(offers(ways, "tap"));
}

TEST_CASE("lamps that ask for more than the cable can ever carry are offered a shorter way") {
    // 12 V behind 30 m of 0.05 ohm/m: 24 VA at most. 30.1 VA need R = 12^2 / (4 * 30.1) = 1.1960 ohm or less:
    // 23.92 m, 6.08 m less. 30 VA need 1.2 ohm, 24 m: there the last digits decide whether 6 or 6.1 m are
    // told.
    for (const double va : {30.1, 30.0}) {
        CAPTURE(va);
        Garden garden;
        garden.transformer("T1", 300, 0, {12}).run("A", "T1", 12, "");
        sell(garden, "c", 0.05, 1);
        garden.lamp_type("lamp", {.va = va});
        garden.catalog.fixtures["lamp"].window_low = Volts(1);
        garden.catalog.fixtures["lamp"].window_high = Volts(15);
        garden.fixture("L", "A", 30, "lamp");
        CHECK(offers(ways_of(sized(garden)), va > 30
                                                 ? "make the way from A to L shorter by 6.1 m (it is 30 m)"
                                                 : "make the way from A to L shorter by 6"));
    }
}

//  T1 --A-- 20 m -- hub +-- 2 m -- L1     5 A each, 0.02 ohm/m: 4 V on the trunk and 0.2 V on each leg leave
//                       +-- 2 m -- L2     7.8 V. The hub x m nearer saves 10 x and costs 5 x times 0.02
//                       ohm/m.
TEST_CASE("a hub is moved by the least step that serves every lamp") {
    Garden garden;
    garden.transformer("T1", 300, 0, {12}).run("A", "T1", 12, "");
    sell(garden, "c", 0.02, 1);
    lamp(garden, "lamp", 5, 8.05, 15);
    garden.splice("hub", "A", 20).fixture("L1", "hub", 2, "lamp").fixture("L2", "hub", 2, "lamp");
    // 8.05 - 7.8 = 0.25 V need x = 2.5 m; steps are a twentieth of the trunk, 1 m
    auto ways = ways_of(sized(garden));
    CHECK(offers(ways,
                 "move hub 3 m nearer to the transformer and lay the 2 lengths from it that much longer"));
    CHECK(offers(ways, "split run A in two: a second cable along the same way that feeds L"));
    garden.site.fixtures.pop_back(); // a hub with one leg is no hub: 10 x saved would be 10 x spent
    garden.catalog.fixtures["lamp"].window_low = Volts(10);
    ways = ways_of(sized(garden));
    CHECK_FALSE(offers(ways, "move"));
}

TEST_CASE("two lamps on the run itself can be split, and an overload is not mended by it") {
    Garden garden;
    garden.transformer("T1", 300, 0, {12}).run("A", "T1", 12, "");
    sell(garden, "c", 0.02, 1);
    garden.catalog.cables["c"].ampacity = Amperes(8);
    lamp(garden, "lamp", 5, 8, 15);
    garden.splice("S", "A", 1).fixture("L1", "S", 5, "lamp").fixture("L2", "S", 5, "lamp");
    CHECK(offers(ways_of(sized(garden)), "split run A in two"));

    Garden direct = garden;
    direct.site.splices.clear();
    direct.site.fixtures[0].from = direct.site.fixtures[1].from = "A";
    direct.catalog.cables["c"].ampacity = Amperes(20);
    direct.catalog.transformers["type of T1"].secondary_limit = Amperes(8);
    CHECK(offers(ways_of(sized(direct)), "split run A in two"));

    direct.catalog.transformers["type of T1"].secondary_limit = Amperes(25);
    direct.catalog.transformers["type of T1"].va = VoltAmperes(140); // 120 VA are 86 %
    const auto ways = ways_of(sized(direct));
    CHECK_FALSE(offers(ways, "split"));
    CHECK(offers(ways, "accept a loading of 86 %"));
    CHECK(offers(ways, "2 transformers in place of T1: runs A; A2. New runs, each a further cable along the "
                       "same way: A2 feeds L1"));
}

TEST_CASE("headroom says in words what is reached") {
    const auto rooms_of = [](const Garden& garden) {
        Assessment assessment;
        assessment.site = std::make_shared<const Site>(garden.site);
        assessment.catalog = std::make_shared<const Catalog>(garden.catalog);
        assessment.lengths = garden.lengths();
        assessment.circuits =
            *build_circuits(*assessment.site, *assessment.catalog, assessment.lengths).value;
        return find_headroom(assessment, {});
    };
    Garden garden;
    garden.transformer("T1", 300, 0, {12}).run("A", "T1", 12, "c");
    sell(garden, "c", 0.02, 1);
    lamp(garden, "lamp", 1, 11, 15);
    garden.fixture("L", "A", 10, "lamp");
    CHECK(rooms_of(garden).back().what == "L falls to 11.00 V");
    garden.catalog.fixtures["lamp"].window_low = Volts(5);
    garden.catalog.cables["c"].ampacity = Amperes(3);
    CHECK(rooms_of(garden).back().what == "the cable to L reaches 3 A");
    garden.catalog.cables["c"].ampacity = Amperes(100);
    garden.catalog.transformers["type of T1"].secondary_limit = Amperes(4);
    CHECK(rooms_of(garden).back().what == "run A reaches 4 A");
    garden.catalog.transformers["type of T1"].secondary_limit = Amperes(100);
    CHECK(rooms_of(garden).back().what == "T1 reaches 80 %");
    garden.catalog.fixtures["lamp"].window_high = Volts(11.5);
    CHECK(rooms_of(garden).back().broken);
    CHECK(rooms_of(garden).back().what == "L rises to 11.50 V");
    CHECK(rooms_of(garden).back().rule == "lamp-overvoltage");
}

TEST_CASE("the cut plan leaves out what is open and says where more is bought than the total suggests") {
    const auto plan_of = [](const Garden& garden) {
        return plan_cuts(garden.site, *build_circuits(garden.site, garden.catalog, garden.lengths()).value);
    };
    Garden garden;
    garden.ideal_transformer("T1").run("A", "T1", 12, "c").run("B", "T1", 12, "");
    sell(garden, "c", 0.001, 1);
    garden.catalog.cables["c"].spools = {Metres(100)};
    lamp(garden, "lamp", 1, 9, 15);
    garden.fixture("L1", "A", 50, "lamp").fixture("L2", "A", 50, "lamp");
    garden.fixture("open cable", "B", 50, "lamp").fixture("open length", "A", 50, "lamp");
    garden.site.fixtures.back().length.reset();
    CutPlan plan = plan_of(garden);
    CHECK(plan.pieces.size() == 2);
    CHECK(plan.stock.size() == 1);
    CHECK(plan.remarks.empty());
    garden.site.fixtures[0].length = garden.site.fixtures[1].length = Metres(60);
    garden.site.fixtures[3].length = Metres(60); // three of 60 m: two spools in total, three in fact
    plan = plan_of(garden);
    CHECK(plan.stock.size() == 3);
    REQUIRE(plan.remarks.size() == 1);
    CHECK(plan.remarks[0].starts_with("c: the pieces do not fit"));
}
