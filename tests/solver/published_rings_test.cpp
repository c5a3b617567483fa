#include <catch2/catch.hpp>

#include "support/garden.hpp"

using namespace rillwatt;
using rillwatt::test::Garden;

// Published rings and lines fed at both ends: B. L. Theraja, A Textbook of Electrical Technology, vol. III,
// chapter 40. Constant currents; tolerance half of the last printed digit.

namespace {

Garden ring_garden(double ohms_per_metre) {
    Garden garden;
    garden.cable("c", ohms_per_metre).ideal_transformer("T");
    return garden;
}

Garden& load(Garden& garden, const std::string& id, const std::string& feed, double metres, double amps) {
    garden.lamp_type(id, {.load = LoadModel::constant_current, .va = 12 * amps});
    return garden.fixture(id, feed, metres, id);
}

double volts(const Garden& garden, const SiteSolution& solution, const std::string& id) {
    return test::lamp(garden, solution.nominal(), id).volts.value();
}

} // namespace

//    236 V --50-- B --25-- C --25-- D ==50== E --50-- 237 V       0.4 ohm/km in one conductor
//               20 A     40 A     25 A     30 A
// The link is the length between D and E.
TEST_CASE("example 40.10, page 1584: a line fed at both ends at different volts") {
    Garden garden = ring_garden(0.4e-3);
    garden.run("A", "T", 236, "c").run("B", "T", 237, "c");
    load(garden, "at 50", "A", 50, 20);
    load(garden, "at 75", "at 50", 25, 40);
    load(garden, "at 100", "at 75", 25, 25);
    load(garden, "at 150", "B", 50, 30);
    garden.link("between", "at 100", "at 150", 50, "c");
    const SiteSolution solution = garden.solve();
    REQUIRE(solution.nominal().solved);
    const auto amps = [&](const char* id) { return test::segment_to(solution.nominal(), id).amps.value(); };
    CHECK(amps("at 50") == Approx(53.75).margin(5e-3));
    CHECK(amps("at 75") == Approx(33.75).margin(5e-3));
    CHECK(amps("at 100") == Approx(-6.25).margin(5e-3));
    CHECK(amps("between") == Approx(-31.25).margin(5e-3));
    CHECK(amps("at 150") == Approx(61.25).margin(5e-3));
    CHECK(volts(garden, solution, "at 75") == Approx(233.18).margin(6e-3));
    CHECK(solution.nominal().runs.at(0).worst_volts.value() == Approx(233.18).margin(6e-3));
}

//        A 400 V
//       / 500 m  \ 700 m
//      B ==300 m== C          0.03 ohm/km in one conductor
//    150 A       200 A
TEST_CASE("example 40.18, page 1591: a ring of three") {
    Garden garden = ring_garden(0.03e-3);
    garden.run("A", "T", 400, "c");
    load(garden, "B", "A", 500, 150);
    load(garden, "C", "A", 700, 200);
    garden.link("BC", "B", "C", 300, "c");
    const SiteSolution solution = garden.solve();
    CHECK(volts(garden, solution, "B") == Approx(394.2).margin(0.05));
    CHECK(volts(garden, solution, "C") == Approx(393.42).margin(5e-3));
    CHECK(test::segment_to(solution.nominal(), "BC").amps.value() == Approx(43.33).margin(5e-3));
}

//    A 240 V --60-- B --80-- C ==90== D --70-- A     0.2 ohm/km in one conductor
//                 100 A    70 A     50 A
TEST_CASE("example 40.17, page 1590: a ring of four, wherever it is cut") {
    const struct {
        const char* a;
        const char* b;
    } cuts[] = {{"A", "B"}, {"B", "C"}, {"C", "D"}, {"D", "A"}};
    const auto metres = [](const std::string& name) {
        return name == "AB" ? 60 : name == "BC" ? 80 : name == "CD" ? 90 : 70;
    };
    for (const auto& cut : cuts) {
        CAPTURE(cut.a, cut.b);
        Garden garden = ring_garden(0.2e-3);
        garden.run("A", "T", 240, "c");
        const std::string names = "ABCDA";
        const auto cut_at = names.find(std::string(cut.a) + cut.b);
        const double amps[] = {0, 100, 70, 50};
        for (std::size_t k = 0; k < cut_at; ++k)
            load(garden, names.substr(k + 1, 1), names.substr(k, 1), metres(names.substr(k, 2)), amps[k + 1]);
        for (std::size_t k = 3; k > cut_at; --k)
            load(garden, names.substr(k, 1), names.substr(k + 1, 1), metres(names.substr(k, 2)), amps[k]);
        garden.link("cut", cut.a, cut.b, metres(std::string(cut.a) + cut.b), "c");
        const SiteSolution solution = garden.solve();
        CHECK(volts(garden, solution, "B") == Approx(236.9).margin(0.05));
        CHECK(volts(garden, solution, "C") == Approx(235.98).margin(5e-3));
        CHECK(volts(garden, solution, "D") == Approx(237.45).margin(5e-3));
    }
}

// Theraja example 40.2, page 1577: 2 A/m over 200 m fed at both ends drops 3 V in the middle, one conductor
// of 0.3 ohm/km counted; a two-wire cable drops 6 V.
TEST_CASE("a uniformly loaded line fed at both ends drops an eighth, in both conductors") {
    Garden garden = ring_garden(0.3e-3);
    garden.run("A", "T", 250, "c").run("B", "T", 250, "c");
    for (const std::string end : {"A", "B"}) {
        std::string feed = end;
        for (int k = 0; k < 200; ++k) {
            const std::string id = end + std::to_string(k);
            load(garden, id, feed, k == 0 ? 0.25 : 0.5, 1);
            feed = id;
        }
    }
    garden.link("middle", "A199", "B199", 0.5, "c");
    const SiteSolution solution = garden.solve();
    const double drop = 250 - volts(garden, solution, "A199");
    CHECK(drop == Approx(6).margin(5e-3));
    CHECK(drop != Approx(3).margin(0.5));
    CHECK(test::segment_to(solution.nominal(), "middle").amps.value() == Approx(0).margin(1e-6));
}
