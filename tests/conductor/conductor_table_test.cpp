#include "rillwatt/conductor/conductor_table.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

constexpr double per_kft = 1 / 304.8; ///< ohm/kft in ohm/m

ConductorTable table(double celsius, double alpha, std::vector<ConductorRow> rows) {
    return {"table", "as given beside the values", Celsius(celsius), alpha, std::move(rows)};
}

} // namespace

TEST_CASE("the section of an AWG size follows ASTM B258") {
    struct Row {
        const char* size;
        double mm2;
    };
    // ASTM B258: d = 0.005 in * 92^((36 - n)/39), areas worked out to five figures.
    const Row rows[] = {{"18 AWG", 0.8230}, {"16 AWG", 1.3087}, {"14 AWG", 2.0809}, {"12 AWG", 3.3088},
                        {"10 AWG", 5.2612}, {"8 AWG", 8.3656},  {"6 AWG", 13.3018}};
    for (const Row& row : rows) {
        INFO(row.size);
        CHECK(*section_mm2(row.size) == Approx(row.mm2).epsilon(0).margin(0.5e-4)); // the last figure printed
    }
    // The two sizes the series is anchored to: 4/0 is 0.46 in, number 36 is 0.005 in across.
    const double square_inch = 25.4 * 25.4;
    CHECK(*section_mm2("4/0 AWG") == Approx(0.46 * 0.46 * 0.785398163397 * square_inch).epsilon(1e-10));
    CHECK(*section_mm2("36 AWG") == Approx(0.005 * 0.005 * 0.785398163397 * square_inch).epsilon(1e-10));
    CHECK(*section_mm2("1/0 AWG") > *section_mm2("1 AWG"));
}

TEST_CASE("the section of a metric size is its name") {
    CHECK(*section_mm2("2.5 mm2") == 2.5);
    CHECK(*section_mm2("4 mm2") == 4);
}

TEST_CASE("what is no conductor size has no section") {
    for (const char* size : {"", "12", "AWG", "12AWG", "0 AWG", "5/0 AWG", "-12 AWG", "12.5 AWG", "41 AWG",
                             "0 mm2", "-1 mm2", "inf mm2", "nan mm2", "2.5mm2", "9999 mm2", "12 AWG "}) {
        INFO(size);
        CHECK_FALSE(section_mm2(size));
    }
}

TEST_CASE("NEC chapter 9 Table 8 at 75 C brought to 20 C and back") {
    // NFPA 70 (2017) chapter 9 Table 8 note 2: R2 = R1 [1 + 0.00323 (T2 - 75)].
    const ConductorTable nec = table(75, 0.00323, {{"12 AWG", OhmsPerMetre(1.98 * per_kft)}});
    const ConductorRow& row = *nec.find("12 AWG");
    CHECK(resistance_at(nec, row, Celsius(75)).value() == Approx(1.98 * per_kft).epsilon(1e-15));
    // 1 + 0.00323 * (20 - 75) = 0.82235
    CHECK(resistance_at(nec, row, Celsius(20)).value() == Approx(1.98 * 0.82235 * per_kft).epsilon(1e-12));
}

TEST_CASE("a table at 20 C brought to 75 C meets NEC Table 8 for solid copper") {
    // ASTM B258 diameter and 1/58 ohm mm2/m (IACS) give 2.5254 ohm/kft for 14 AWG at 20 C; with 0.00393 per C
    // the factor to 75 C is 1.21615 and NFPA 70 (2017) chapter 9 Table 8 prints 3.07 for 14 AWG solid.
    const ConductorTable copper =
        table(20, 0.00393, {{"14 AWG", OhmsPerMetre(1.0 / 58 / *section_mm2("14 AWG"))}});
    const ConductorRow& row = *copper.find("14 AWG");
    CHECK(row.resistance.value() / per_kft == Approx(2.5254).epsilon(2e-5));
    CHECK(resistance_at(copper, row, Celsius(75)).value() / row.resistance.value() ==
          Approx(1.21615).epsilon(1e-12));
    CHECK(resistance_at(copper, row, Celsius(75)).value() / per_kft == Approx(3.07).epsilon(0.001));
}

TEST_CASE("a cable has two conductors") {
    // 100 ft of 12 AWG stranded at 75 C, out and back: 2 * 100 * 1.98/1000 = 0.396 ohm.
    CHECK(loop_resistance(OhmsPerMetre(1.98 * per_kft), feet(100)).value() == Approx(0.396).epsilon(1e-12));
}

TEST_CASE("a size is found as it is spelled, and only so") {
    const ConductorTable nec = table(75, 0.00323, {{"14 AWG", OhmsPerMetre(1)}, {"12 AWG", OhmsPerMetre(2)}});
    REQUIRE(nec.find("12 AWG") != nullptr);
    CHECK(nec.find("12 AWG")->resistance == OhmsPerMetre(2));
    CHECK(nec.find("12") == nullptr);
    CHECK(nec.find("10 AWG") == nullptr);
}
