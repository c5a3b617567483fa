#include "rillwatt/limits/breach.hpp"
#include "rillwatt/limits/supply_limits.hpp"

#include <catch2/catch.hpp>

#include "support/garden.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;

TEST_CASE("110 to 120 V belong together, and 220 to 240 V") {
    struct Row {
        double supply;
        double primary;
        bool fits;
    };
    // NFPA 70, 110.4 (from memory): equipment of the 120 V and the 240 V class; 5 % of service tolerance is
    // common practice, no source.
    const auto row =
        GENERATE(Row{120, 120, true}, Row{110, 120, true}, Row{120, 110, true}, Row{230, 240, true},
                 Row{240, 220, true}, Row{240, 120, false}, Row{120, 240, false}, Row{208, 240, false},
                 Row{124, 120, true}, Row{126, 120, true}, Row{126.1, 120, false}, Row{277, 240, false});
    CAPTURE(row.supply, row.primary);
    CHECK(supply_fits(Volts(row.supply), Volts(row.primary)) == row.fits);
}

namespace {

constexpr double pond_edge = 100;

/// Two runs on one transformer, each with one light; water from x = 100 m on.
Garden beside_water(double tap_a, double tap_b) {
    Garden garden;
    garden.transformer("T1", 300, 0, {tap_a, tap_b}).cable("c", 0.001);
    garden.run("A", "T1", tap_a, "c").run("B", "T1", tap_b, "c");
    garden.lamp_type("lamp", {.va = 5});
    garden.catalog.fixtures["lamp"].window_low = Volts(1);
    garden.catalog.fixtures["lamp"].window_high = Volts(100);
    garden.fixture("on A", "A", 1, "lamp").fixture("on B", "B", 1, "lamp");
    Area pond;
    pond.id = "pond";
    pond.kind = AreaKind::water;
    pond.outline = {{pond_edge, -50}, {200, -50}, {200, 50}, {pond_edge, 50}};
    garden.site.areas.push_back(pond);
    for (Fixture& fixture : garden.site.fixtures)
        fixture.at = PlanPoint{0, 0};
    garden.site.transformers[0].at = PlanPoint{0, 0};
    return garden;
}

/// "part case value" of each breach of the contact limit.
std::vector<std::string> contact_of(const Garden& garden) {
    const SiteCircuits circuits = *garden.build().value;
    const SiteSolution solution = solve_site(garden.site, circuits);
    std::vector<std::string> lines;
    for (const Breach& breach : find_breaches(garden.site, circuits, solution))
        if (breach.kind == BreachKind::contact_volts)
            lines.push_back(fmt::format(
                "{} {} {:.2f}", part_of(garden.site, circuits.transformers[breach.transformer], breach).id,
                solution.cases[breach.operating_case].conditions.name, breach.value));
    return lines;
}

using Lines = std::vector<std::string>;

} // namespace

TEST_CASE("a light in water is judged by the tap of its own run") {
    Garden garden = beside_water(12, 18);
    garden.site.fixtures[0].in_water = true;
    CHECK(contact_of(garden).empty());
    garden.site.fixtures[0].in_water = false;
    garden.site.fixtures[1].in_water = true;
    CHECK(contact_of(garden) == Lines{"on B nominal 18.00"});
    Garden turned = beside_water(18, 12);
    turned.site.fixtures[1].in_water = true;
    CHECK(contact_of(turned).empty());
}

TEST_CASE("contact volts are the tap's times the supply over the primary volts") {
    // NFPA 70 (2017, 2020) 411.1(2): 15 V AC.
    Garden garden = beside_water(12, 12);
    garden.site.fixtures[1].in_water = true;
    garden.site.settings.supply_voltage = Volts(240);
    CHECK(contact_of(garden) == Lines{"on B nominal 24.00"});
    // 16 V on a supply of 110 V: 14.67 V, 15.40 V when that is 5 % high
    garden = beside_water(16, 16);
    garden.site.fixtures[1].in_water = true;
    garden.site.settings.supply_voltage = Volts(110);
    CHECK(contact_of(garden) == Lines{"B strong 15.40"});
    garden.site.settings.supply_band = 0;
    CHECK(contact_of(garden).empty());
    garden.site.settings.supply_voltage = Volts(120);
    CHECK(contact_of(garden) == Lines{"on B nominal 16.00"});
}

TEST_CASE("a strong supply alone is a note of the run, the nominal one an error of each light") {
    Garden garden = beside_water(15, 15);
    garden.site.fixtures[0].in_water = true;
    const SiteCircuits circuits = *garden.build().value;
    const auto breaches = find_breaches(garden.site, circuits, solve_site(garden.site, circuits));
    REQUIRE(breaches.size() == 1);
    CHECK(severity_of(breaches[0]) == Severity::note);
    CHECK(contact_of(garden) == Lines{"A strong 15.75"});
}

TEST_CASE("a supply has to be listed for lights in water, lights near it, and where it hangs near it") {
    const auto needs = [](const Garden& garden) {
        return needs_water_listing(AreaIndex(garden.site), garden.site,
                                   garden.build().value->transformers[0]);
    };
    Garden garden = beside_water(12, 12);
    CHECK_FALSE(needs(garden));
    garden.site.fixtures[0].in_water = true;
    CHECK(needs(garden));
    garden.site.fixtures[0].in_water.reset();
    // NFPA 70 (2017, 2020) 411.5(B): 10 ft, which are 3.048 m.
    garden.site.fixtures[0].at = PlanPoint{pond_edge - 3.04, 0};
    CHECK(needs(garden));
    garden.site.settings.code = CodeFamily::iec;
    CHECK_FALSE(needs(garden));
    garden.site.settings.code = CodeFamily::nec;
    garden.site.fixtures[0].at = PlanPoint{pond_edge - 3.05, 0};
    CHECK_FALSE(needs(garden));
    garden.site.transformers[0].at = PlanPoint{pond_edge - 3.04, 0};
    CHECK(needs(garden));
}
