// What is chosen suits the supply and the water: `check` has nothing to say against it.

#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/sizing/size.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "support/garden.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

TransformerType model(const std::string& id, double primary, double price, bool water_listed) {
    TransformerType type;
    type.id = id;
    type.va = VoltAmperes(300);
    type.primary_volts = Volts(primary);
    type.taps = {Volts(12), Volts(13), Volts(14), Volts(15)};
    type.price = Money(price);
    type.water_listed = water_listed;
    return type;
}

/// One lamp far out on a run of which nothing is chosen yet; water from x = 100 m on.
Garden open_run() {
    Garden garden;
    garden.transformer("T1", 300, 0, {12}).run("A", "T1", 12, "");
    garden.site.transformers[0].model.reset();
    garden.site.transformers[0].at = PlanPoint{0, 0};
    garden.site.runs[0].tap.reset();
    garden.catalog.transformers.clear();
    for (const TransformerType& type :
         {model("for 120 V", 120, 50, false), model("for 120 V and water", 120, 90, true),
          model("for 240 V", 240, 70, false), model("for 240 V and water", 240, 110, true)})
        garden.catalog.transformers[type.id] = type;
    garden.cable("c", 0.005);
    garden.catalog.cables["c"].price = MoneyPerMetre(1);
    garden.catalog.cables["c"].direct_burial = true;
    garden.lamp_type("lamp", {.va = 12});
    garden.catalog.fixtures["lamp"].window_low = Volts(9);
    garden.catalog.fixtures["lamp"].window_high = Volts(16);
    garden.catalog.fixtures["lamp"].rating = WaterRating::submersible;
    garden.fixture("L", "A", 40, "lamp");
    garden.site.fixtures[0].at = PlanPoint{40, 0};
    Area pond;
    pond.id = "pond";
    pond.kind = AreaKind::water;
    pond.outline = {{100, -50}, {200, -50}, {200, 50}, {100, 50}};
    garden.site.areas.push_back(pond);
    return garden;
}

SizeResult sized(const Garden& garden) {
    auto result = size_site(std::make_shared<const Site>(garden.site),
                            std::make_shared<const Catalog>(garden.catalog), {});
    REQUIRE(result);
    return std::move(*result.value);
}

std::string chosen_model(const Garden& garden) {
    const SizeResult result = sized(garden);
    if (result.status == SizeStatus::infeasible) return "infeasible";
    return result.sized->transformers[0].model.value_or("none");
}

} // namespace

TEST_CASE("a model is chosen for the volts of its circuit") {
    Garden garden = open_run();
    CHECK(chosen_model(garden) == "for 120 V");
    garden.site.settings.supply_voltage = Volts(240);
    CHECK(chosen_model(garden) == "for 240 V");
    garden.site.settings.supply_voltage = Volts(110);
    CHECK(chosen_model(garden) == "for 120 V");
    // 208 V is neither of 220 to 240 V nor within 5 % of 240 V; check would call it supply-volts
    garden.site.settings.supply_voltage = Volts(208);
    CHECK(chosen_model(garden) == "infeasible");
}

TEST_CASE("a model is chosen that is listed for lights in water, near it, or to hang there") {
    Garden garden = open_run();
    garden.site.fixtures[0].in_water = true;
    CHECK(chosen_model(garden) == "for 120 V and water");
    garden.site.fixtures[0].in_water.reset();
    garden.site.fixtures[0].at = PlanPoint{98, 0}; // 2 m, less than 10 ft
    CHECK(chosen_model(garden) == "for 120 V and water");
    garden.site.fixtures[0].at = PlanPoint{96.9, 0};
    CHECK(chosen_model(garden) == "for 120 V");
    garden.site.transformers[0].at = PlanPoint{98, 0};
    CHECK(chosen_model(garden) == "for 120 V and water");
}

TEST_CASE("for a light in water or near it a tap counts with its supply") {
    // 124 V on 120 V: the 15 V tap shows 15.5 V, above the contact limit of 15 V; 14 V shows 14.47 V.
    for (const bool in_water : {true, false}) {
        Garden garden = open_run();
        garden.site.settings.supply_voltage = Volts(124);
        garden.site.fixtures[0].in_water = in_water;
        garden.site.fixtures[0].at = PlanPoint{in_water ? 110.0 : 98.0, 0};
        const SizeResult result = sized(garden);
        REQUIRE(result.status != SizeStatus::infeasible);
        CHECK(*result.sized->runs[0].tap <= Volts(14));
        garden.catalog.fixtures["lamp"].window_low = Volts(14.2); // nothing but the 15 V tap would do
        CHECK(chosen_model(garden) == "infeasible");
        garden.site.fixtures[0].in_water = false;
        garden.site.fixtures[0].at = PlanPoint{0, 0};
        CHECK(chosen_model(garden) == "for 120 V");
    }
}
