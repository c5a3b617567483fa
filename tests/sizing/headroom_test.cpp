#include "rillwatt/sizing/headroom.hpp"

#include <catch2/catch.hpp>

#include "support/garden.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;

namespace {

// One lamp of 1 VA at the end of 20 m of 0.005 ohm/m: R = 0.2 ohm.
//
//   T1 --A-- 20 m -- L
Garden one_lamp(double va, double low) {
    Garden garden;
    garden.transformer("T1", va, 0, {12}).run("A", "T1", 12, "c").cable("c", 0.005);
    garden.lamp_type("lamp", {.va = 1});
    garden.catalog.fixtures["lamp"].window_low = Volts(low);
    garden.catalog.fixtures["lamp"].window_high = Volts(15);
    garden.fixture("L", "A", 20, "lamp");
    return garden;
}

std::vector<Headroom> rooms_of(const Garden& garden, const SizeOptions& options = {}) {
    Assessment assessment;
    assessment.site = std::make_shared<const Site>(garden.site);
    assessment.catalog = std::make_shared<const Catalog>(garden.catalog);
    assessment.lengths = garden.lengths();
    assessment.circuits = *build_circuits(*assessment.site, *assessment.catalog, assessment.lengths).value;
    return find_headroom(assessment, options);
}

const Headroom& room_of(const std::vector<Headroom>& rooms, const std::string& part) {
    for (const Headroom& room : rooms)
        if (room.part == part) return room;
    FAIL("no headroom of " << part);
    return rooms.front();
}

} // namespace

TEST_CASE("headroom at a lamp ends where the volts reach its window") {
    // S behind R from V0: V (V0 - V) / R = S; at 11 V 55 VA, 1 of them is there already
    const auto rooms = rooms_of(one_lamp(300, 11));
    const Headroom& room = room_of(rooms, "L");
    CHECK(room.more.value() == Approx(54).margin(0.06));
    CHECK(room.breaks == "L");
    CHECK(room.rule == "lamp-undervoltage");
}

TEST_CASE("headroom at the head of a run ends where the transformer is full") {
    // 80 % of 100 VA, less the 1 VA (and its loss) that is there
    const auto rooms = rooms_of(one_lamp(100, 9));
    const Headroom& room = room_of(rooms, "A");
    CHECK(room.more.value() == Approx(79).margin(0.06));
    CHECK(room.breaks == "T1");
    CHECK(room_of(rooms, "T1").more.value() == Approx(79).margin(0.06));
    CHECK(room_of(rooms, "T1").rule == "transformer-margin");
}

TEST_CASE("beyond the rating of a transformer the rule of the rating speaks") {
    SizeOptions options;
    options.loading = 1;
    const auto full = rooms_of(one_lamp(100, 9), options);
    CHECK(room_of(full, "T1").more.value() == Approx(99).margin(0.06));
    CHECK(room_of(full, "T1").rule == "transformer-overloaded");
    // 1 VA on 0.9 VA: overloaded as it stands
    CHECK(room_of(rooms_of(one_lamp(0.9, 9)), "T1").broken);
    CHECK(room_of(rooms_of(one_lamp(0.9, 9)), "T1").rule == "transformer-overloaded");
}

TEST_CASE("headroom is bounded by the current of a cable and of an output") {
    Garden garden = one_lamp(10000, 1);
    garden.catalog.cables["c"].ampacity = Amperes(5);
    // at the lamp 5 A leave 11 V: 55 VA
    CHECK(room_of(rooms_of(garden), "L").more.value() == Approx(54).margin(0.06));
    CHECK(room_of(rooms_of(garden), "L").rule == "cable-overloaded");
    // at the head the output's 25 A: 300 VA
    CHECK(room_of(rooms_of(garden), "A").more.value() == Approx(299).margin(0.06));
    CHECK(room_of(rooms_of(garden), "A").rule == "secondary-overloaded");
}

TEST_CASE("what is broken already has no headroom") {
    const auto rooms = rooms_of(one_lamp(300, 11.99));
    CHECK(room_of(rooms, "L").broken);
}

namespace {

// Two hubs of 4 mm2, 0.0042 ohm/m out and back, 18 m from the transformer, joined by a thin link:
//
//   T1 --A--+-- 18 m thick --- near (lamp of 1 VA)
//           |                    | link, 6 m thin, ampacity 7 A
//           +-- 18 m thick --- far (lamp of 1 VA)
Garden two_hubs() {
    Garden garden;
    garden.transformer("T1", 3000, 0, {12}).run("A", "T1", 12, "thick");
    garden.cable("thick", 0.0021).cable("thin", 0.0021);
    garden.catalog.cables["thick"].ampacity = Amperes(40);
    garden.catalog.cables["thin"].ampacity = Amperes(7);
    garden.catalog.transformers["type of T1"].secondary_limit = Amperes(40);
    garden.lamp_type("lamp", {.va = 1});
    garden.catalog.fixtures["lamp"].window_low = Volts(9);
    garden.catalog.fixtures["lamp"].window_high = Volts(15);
    garden.fixture("near", "A", 18, "lamp").fixture("far", "A", 18, "lamp");
    garden.link("ring", "near", "far", 6, "thin");
    return garden;
}

} // namespace

TEST_CASE("where a link binds it is named itself, not the cable to the hub") {
    const Headroom room = room_of(rooms_of(two_hubs()), "near");
    CHECK(room.rule == "cable-overloaded");
    CHECK(room.breaks == "ring");
    CHECK(room.what == "link ring reaches 7 A");
    // By hand: R to each hub, R / 3 in the link; of I at `near` the way round by `far` takes
    // R / (R + R + R / 3) = 3 / 7, 7 A of 16.33 A; the drop to `near` is then 9.33 A * 0.0756 ohm = 0.706 V.
    CHECK(room.more.value() == Approx(16.33 * 11.294).epsilon(0.01));
}

TEST_CASE("an output that joined taps drive backwards over its limit has no headroom") {
    // 14 and 14 V against 12 V over 0.1 ohm each: the node where they meet stands at 13.33 V less a little,
    // so that 13.3 A flow back into the 12 V output.
    Garden garden;
    garden.transformer("T1", 3000, 0, {12, 14}).cable("c", 0.005);
    garden.run("A", "T1", 12, "c").run("B", "T1", 14, "c").run("C", "T1", 14, "c");
    garden.catalog.transformers["type of T1"].secondary_limit = Amperes(10);
    garden.lamp_type("lamp", {.va = 1});
    garden.catalog.fixtures["lamp"].window_low = Volts(9);
    garden.catalog.fixtures["lamp"].window_high = Volts(15);
    garden.fixture("L", "A", 10, "lamp");
    garden.link("BL", "B", "L", 10, "c").link("CL", "C", "L", 10, "c");
    const auto rooms = rooms_of(garden);
    for (const char* part : {"T1", "A", "B", "C", "L"}) {
        CAPTURE(part);
        CHECK(room_of(rooms, part).broken);
        CHECK(room_of(rooms, part).breaks == "A");
        CHECK(room_of(rooms, part).rule == "secondary-overloaded");
    }
}
