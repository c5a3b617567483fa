#include "rillwatt/mains/burial.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

double cover(BurialPlace place, BurialMethod method) { return minimum_cover(place, method) / inches(1); }

} // namespace

TEST_CASE("minimum cover is that of the burial table in every row and column") {
    struct Row {
        BurialPlace place;
        double direct, rigid, pvc, home_direct, home_raceway, low_direct, low_raceway;
    };
    // NFPA 70 (2017) Table 300.5 and (2023) Table 300.5(A), equal; inches.
    const auto row = GENERATE(Row{BurialPlace::not_listed_below, 24, 6, 18, 12, 12, 6, 6},
                              Row{BurialPlace::under_two_inch_concrete, 18, 6, 12, 6, 6, 6, 6},
                              Row{BurialPlace::under_building, 0, 0, 0, 0, 0, 0, 0},
                              Row{BurialPlace::under_slab, 18, 4, 4, 6, 4, 6, 4},
                              Row{BurialPlace::street_or_driveway, 24, 24, 24, 24, 24, 24, 24},
                              Row{BurialPlace::home_driveway, 18, 18, 18, 12, 12, 18, 18});
    CAPTURE(static_cast<int>(row.place));
    CHECK(cover(row.place, BurialMethod::direct) == Approx(row.direct));
    CHECK(cover(row.place, BurialMethod::rigid_metal) == Approx(row.rigid));
    CHECK(cover(row.place, BurialMethod::nonmetallic) == Approx(row.pvc));
    CHECK(cover(row.place, BurialMethod::home_gfci_direct) == Approx(row.home_direct));
    CHECK(cover(row.place, BurialMethod::home_gfci_raceway) == Approx(row.home_raceway));
    CHECK(cover(row.place, BurialMethod::low_voltage_direct) == Approx(row.low_direct));
    CHECK(cover(row.place, BurialMethod::low_voltage_raceway) == Approx(row.low_raceway));
}

TEST_CASE("what a circuit crosses names a row of the burial table") {
    CHECK(burial_place(Crossing::lawn, true) == BurialPlace::not_listed_below);
    CHECK(burial_place(Crossing::slab, false) == BurialPlace::under_slab);
    CHECK(burial_place(Crossing::driveway, true) == BurialPlace::home_driveway);
    CHECK(burial_place(Crossing::driveway, false) == BurialPlace::street_or_driveway);
}

TEST_CASE("the shallower home column is open to dwellings only and never deepens a conduit") {
    const auto direct = cover_needed(Wiring::direct_burial, Crossing::lawn, true);
    REQUIRE(direct);
    CHECK(direct->by_wiring / inches(1) == Approx(24));
    REQUIRE(direct->as_home_gfci);
    CHECK(*direct->as_home_gfci / inches(1) == Approx(12));

    const auto rigid = cover_needed(Wiring::rigid_metal, Crossing::lawn, true);
    REQUIRE(rigid);
    CHECK(*rigid->as_home_gfci / inches(1) == Approx(6));

    const auto slab = cover_needed(Wiring::pvc, Crossing::slab, true);
    REQUIRE(slab);
    CHECK(*slab->as_home_gfci / inches(1) == Approx(4));

    CHECK_FALSE(cover_needed(Wiring::direct_burial, Crossing::lawn, false)->as_home_gfci);
    CHECK_FALSE(cover_needed(Wiring::indoor, Crossing::lawn, true));
}
