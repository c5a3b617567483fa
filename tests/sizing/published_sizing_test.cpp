#include "rillwatt/sizing/size.hpp"

#include <catch2/catch.hpp>

#include "support/garden.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

// V. K. Mehta and R. Mehta, Principles of Power System, 4th edition 2005, example 13.2, page 314: a radial
// line with 30 A at 40 m, 40 A at 100 m, 100 A at 150 m and 50 A at 250 m, resistivity 1.78e-8 ohm m, at most
// 10 V of drop. Printed answer: 1.164 cm2 per conductor.
//
//   250 V o--40 m--+--60 m--+--50 m---+--100 m--+
//                 30 A     40 A     100 A      50 A
Garden published_line() {
    Garden garden;
    garden.ideal_transformer("T1").run("A", "T1", 250, "");
    garden.catalog.transformers["type of T1"].secondary_limit = Amperes(1000);
    const struct {
        const char* id;
        const char* from;
        double metres;
        double amps;
    } loads[] = {{"L1", "A", 40, 30}, {"L2", "L1", 60, 40}, {"L3", "L2", 50, 100}, {"L4", "L3", 100, 50}};
    for (const auto& load : loads) {
        const std::string type = std::string("type of ") + load.id;
        garden.lamp_type(type,
                         {.load = LoadModel::constant_current, .va = 250 * load.amps, .rated_volts = 250});
        garden.catalog.fixtures[type].window_low = Volts(240);
        garden.catalog.fixtures[type].window_high = Volts(250);
        garden.fixture(load.id, load.from, load.metres, type);
    }
    return garden;
}

void sell(Garden& garden, const std::string& id, double section_mm2) {
    garden.cable(id, 1.78e-8 / (section_mm2 * 1e-6));
    CableType& type = garden.catalog.cables[id];
    type.section_mm2 = section_mm2;
    type.price = MoneyPerMetre(section_mm2);
    type.direct_burial = true;
}

SizeResult sized(const Garden& garden, const SizeOptions& options = {}) {
    auto result =
        size_site(std::make_shared<const Site>(garden.site), garden.catalog, garden.lengths(), options);
    REQUIRE(result);
    return *result.value;
}

} // namespace

TEST_CASE("the published line takes the least section that keeps its drop") {
    Garden garden = published_line();
    for (const double section : {116.30, 116.41, 116.42, 116.50, 120.0})
        sell(garden, std::to_string(section), section);
    SizeOptions options;
    options.loading = 1;
    const SizeResult result = sized(garden, options);
    CHECK(result.status == SizeStatus::optimal);
    CHECK(result.sized->runs[0].cable == std::to_string(116.42)); // 116.412 mm2 is the exact answer
    CHECK(result.cost->value() == Approx(116.42 * 250));
}

TEST_CASE("a lamp exactly at the end of its window passes, a hair beyond it does not") {
    // 10 A through 2 * 25 m * 0.01 ohm/m: 12 V become exactly 7 V
    const struct {
        double low;
        bool works;
    } rows[] = {{6.999, true}, {7.0, true}, {7.001, false}};
    for (const auto& row : rows) {
        CAPTURE(row.low);
        Garden garden;
        garden.ideal_transformer("T1").run("A", "T1", 12, "");
        sell(garden, "c", 1.78);
        garden.lamp_type("lamp", {.load = LoadModel::constant_current, .va = 120});
        garden.catalog.fixtures["lamp"].window_low = Volts(row.low);
        garden.catalog.fixtures["lamp"].window_high = Volts(15);
        garden.fixture("L", "A", 25, "lamp");
        CHECK((sized(garden).status == SizeStatus::optimal) == row.works);
    }
}

TEST_CASE("a cable at its ampacity passes, a hair beyond it does not") {
    for (const double ampacity : {9.999, 10.0, 10.001}) {
        CAPTURE(ampacity);
        Garden garden;
        garden.ideal_transformer("T1").run("A", "T1", 12, "");
        sell(garden, "c", 178);
        garden.catalog.cables["c"].ampacity = Amperes(ampacity);
        garden.lamp_type("lamp", {.load = LoadModel::constant_current, .va = 120});
        garden.catalog.fixtures["lamp"].window_low = Volts(9);
        garden.catalog.fixtures["lamp"].window_high = Volts(15);
        garden.fixture("L", "A", 25, "lamp");
        CHECK((sized(garden).status == SizeStatus::optimal) == (ampacity >= 10));
    }
}

TEST_CASE("what cannot work says how far it is off and how much shorter would do") {
    // 10 A through 2 * 30 m * 0.01 ohm/m: 12 V become 6 V where 7 V are needed; 25 m would do
    Garden garden;
    garden.ideal_transformer("T1").run("A", "T1", 12, "");
    sell(garden, "c", 1.78);
    garden.lamp_type("lamp", {.load = LoadModel::constant_current, .va = 120});
    garden.catalog.fixtures["lamp"].window_low = Volts(7);
    garden.catalog.fixtures["lamp"].window_high = Volts(15);
    garden.fixture("L", "A", 30, "lamp");
    const SizeResult result = sized(garden);
    CHECK(result.status == SizeStatus::infeasible);
    REQUIRE(result.infeasible);
    CHECK(result.infeasible->proven);
    CHECK(result.infeasible->part == "L");
    CHECK(result.infeasible->best->value() == Approx(6).margin(1e-9));
    CHECK(result.infeasible->needed->value() == Approx(7));
    CHECK(result.infeasible->suggestion == "make the way from A to L shorter by 5 m (it is 30 m)");
}

TEST_CASE("a higher tap than the typed one is the first thing offered") {
    Garden garden;
    garden.transformer("T1", 300, 0, {12, 13, 14}).run("A", "T1", 12, "");
    sell(garden, "c", 1.78);
    garden.lamp_type("lamp", {.load = LoadModel::constant_current, .va = 120});
    garden.catalog.fixtures["lamp"].window_low = Volts(7);
    garden.catalog.fixtures["lamp"].window_high = Volts(15);
    garden.fixture("L", "A", 30, "lamp");
    const SizeResult result = sized(garden);
    REQUIRE(result.infeasible);
    CHECK(result.infeasible->suggestion.starts_with("tap 1"));
}

TEST_CASE("a load too large for any transformer asks for two") {
    Garden garden;
    garden.transformer("T1", 100, 0, {12}).run("A", "T1", 12, "").run("B", "T1", 12, "");
    garden.catalog.transformers["type of T1"].price = Money(100);
    garden.site.transformers[0].model.reset();
    sell(garden, "c", 178);
    garden.lamp_type("lamp", {.va = 50});
    garden.catalog.fixtures["lamp"].window_low = Volts(9);
    garden.catalog.fixtures["lamp"].window_high = Volts(15);
    garden.fixture("L1", "A", 5, "lamp").fixture("L2", "B", 5, "lamp");
    const SizeResult result = sized(garden);
    REQUIRE(result.infeasible);
    CHECK(result.infeasible->part == "T1");
    CHECK(result.infeasible->suggestion ==
          "2 transformers in place of T1, type of T1 and type of T1: runs A; B");
}
