// The built-in conductor tables against what the standards print or imply.

#include "rillwatt/catalog/read_catalog.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace rillwatt;

namespace {

const Catalog& built_in() {
    static const Catalog catalog = [] {
        LoadResult<Catalog> result = read_built_in_catalog();
        REQUIRE(result);
        return std::move(*result.value);
    }();
    return catalog;
}

double ohms_per_km(const char* table, const char* size) {
    const ConductorTable* found = find_entry(built_in().tables, table);
    REQUIRE(found != nullptr);
    const ConductorRow* row = found->find(size);
    REQUIRE(row != nullptr);
    return row->resistance.value() * 1000;
}

double at_celsius(const char* table, const char* size, double celsius) {
    const ConductorTable& found = built_in().tables.at(table);
    return resistance_at(found, *found.find(size), Celsius(celsius)).value() * 1000;
}

struct Row {
    const char* size;
    double printed;
};

/// Equal but for one in the last figure printed.
void check_printed(const char* table, const Row& row, double ohms, double last_figure) {
    INFO(table << ", " << row.size);
    CHECK(ohms == Approx(row.printed).epsilon(0).margin(last_figure + 1e-9));
}

} // namespace

TEST_CASE("stranded copper has the resistance that the US code prints") {
    // NFPA 70 (2017) chapter 9 Table 8, uncoated copper, stranded, ohm/kFT at 75 C; the 2023 table has the
    // same.
    const Row rows[] = {{"18 AWG", 7.95},    {"16 AWG", 4.99},    {"14 AWG", 3.14},   {"12 AWG", 1.98},
                        {"10 AWG", 1.24},    {"8 AWG", 0.778},    {"6 AWG", 0.491},   {"4 AWG", 0.308},
                        {"3 AWG", 0.245},    {"2 AWG", 0.194},    {"1 AWG", 0.154},   {"1/0 AWG", 0.122},
                        {"2/0 AWG", 0.0967}, {"3/0 AWG", 0.0766}, {"4/0 AWG", 0.0608}};
    for (const Row& row : rows) {
        INFO(row.size);
        CHECK(ohms_per_km("nec-8-stranded", row.size) * 0.3048 == Approx(row.printed).epsilon(1e-12));
    }
}

TEST_CASE("the two columns of the US code table, per foot and per kilometre, agree") {
    // The same table, ohm/km at 75 C: three to four figures.
    const Row stranded[] = {{"18 AWG", 26.1},  {"16 AWG", 16.4}, {"14 AWG", 10.3}, {"12 AWG", 6.50},
                            {"10 AWG", 4.070}, {"8 AWG", 2.551}, {"6 AWG", 1.608}};
    for (const Row& row : stranded) {
        INFO(row.size);
        CHECK(ohms_per_km("nec-8-stranded", row.size) == Approx(row.printed).epsilon(0.002));
    }
    const Row solid[] = {{"18 AWG", 25.5}, {"16 AWG", 16.0},  {"14 AWG", 10.1},
                         {"12 AWG", 6.34}, {"10 AWG", 3.984}, {"8 AWG", 2.506}};
    for (const Row& row : solid) {
        INFO(row.size);
        CHECK(ohms_per_km("nec-8-solid", row.size) == Approx(row.printed).epsilon(0.004));
    }
}

TEST_CASE("solid copper has the resistance that the US code prints, not the stranded one") {
    // NFPA 70 (2017) chapter 9 Table 8, uncoated copper, solid, ohm/kFT at 75 C.
    const Row rows[] = {{"18 AWG", 7.77}, {"16 AWG", 4.89}, {"14 AWG", 3.07},
                        {"12 AWG", 1.93}, {"10 AWG", 1.21}, {"8 AWG", 0.764}};
    for (const Row& row : rows) {
        INFO(row.size);
        CHECK(ohms_per_km("nec-8-solid", row.size) * 0.3048 == Approx(row.printed).epsilon(1e-12));
        CHECK(ohms_per_km("nec-8-solid", row.size) < ohms_per_km("nec-8-stranded", row.size));
    }
}

TEST_CASE("annealed copper at 20 C follows from diameter and conductivity") {
    // ASTM B258 diameters and 58 m/(ohm mm2) (NBS Circular 31, NBS Handbook 100), ohm/km worked out to five
    // figures.
    const Row rows[] = {{"18 AWG", 20.948}, {"16 AWG", 13.175}, {"14 AWG", 8.2855}, {"12 AWG", 5.2108},
                        {"10 AWG", 3.2771}, {"8 AWG", 2.0610},  {"6 AWG", 1.2962}};
    for (const Row& row : rows) {
        INFO(row.size);
        CHECK(ohms_per_km("iacs-20", row.size) == Approx(row.printed).epsilon(4e-5));
        CHECK(ohms_per_km("iacs-20", row.size) == Approx(1000.0 / 58 / *section_mm2(row.size)).epsilon(1e-6));
    }
}

TEST_CASE("metric conductors have the greatest resistance that IEC 60228 allows") {
    // IEC 60228 Tables 1 and 2 (class 1 and 2) and Table 3 (class 5), plain copper, ohm/km at 20 C.
    const Row class_2[] = {{"0.5 mm2", 36.0}, {"0.75 mm2", 24.5}, {"1 mm2", 18.1}, {"1.5 mm2", 12.1},
                           {"2.5 mm2", 7.41}, {"4 mm2", 4.61},    {"6 mm2", 3.08}, {"10 mm2", 1.83},
                           {"16 mm2", 1.15},  {"25 mm2", 0.727}};
    for (const Row& row : class_2)
        check_printed("iec-60228-2", row, ohms_per_km("iec-60228-2", row.size), 0);
    const Row class_5[] = {{"0.5 mm2", 39.0}, {"0.75 mm2", 26.0}, {"1 mm2", 19.5}, {"1.5 mm2", 13.3},
                           {"2.5 mm2", 7.98}, {"4 mm2", 4.95},    {"6 mm2", 3.30}, {"10 mm2", 1.91},
                           {"16 mm2", 1.21},  {"25 mm2", 0.780}};
    for (const Row& row : class_5)
        check_printed("iec-60228-5", row, ohms_per_km("iec-60228-5", row.size), 0);
}

TEST_CASE("copper at 20 C brought to 75 C meets the US code's solid column") {
    // NFPA 70 (2017) chapter 9 Table 8 says it is computed from NBS Handbook 100; three figures printed,
    // ohm/kFT.
    const Row rows[] = {
        {"18 AWG", 7.77}, {"16 AWG", 4.89}, {"14 AWG", 3.07}, {"12 AWG", 1.93}, {"10 AWG", 1.21}};
    for (const Row& row : rows)
        check_printed("iacs-20", row, at_celsius("iacs-20", row.size, 75) * 0.3048, 0.01);
    check_printed("iacs-20", {"8 AWG", 0.764}, at_celsius("iacs-20", "8 AWG", 75) * 0.3048, 0.001);
}

TEST_CASE("the US code's solid column brought to 20 C meets copper's formula") {
    // NFPA 70 (2017) chapter 9 Table 8 note 2: R2 = R1 [1 + 0.00323 (T2 - 75)]; the table has three figures.
    for (const char* size : {"18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG", "8 AWG"}) {
        INFO(size);
        CHECK(at_celsius("nec-8-solid", size, 20) == Approx(ohms_per_km("iacs-20", size)).epsilon(0.004));
    }
}

TEST_CASE("warming copper from 20 C multiplies its resistance as the tables of factors say") {
    // 1 + 0.00393 (T - 20), the same as (234.5 + T) / 254.5 to four figures: FAA AC 43.13-1B change 1
    // paragraph 11-66.
    const double celsius[] = {25, 30, 40, 50, 60, 75};
    for (const double t : celsius) {
        INFO(t);
        const double factor = at_celsius("iec-60228-2", "2.5 mm2", t) / 7.41;
        CHECK(factor == Approx((234.5 + t) / 254.5).epsilon(1e-4));
    }
    CHECK(at_celsius("iec-60228-2", "2.5 mm2", 75) / 7.41 == Approx(1.2161).epsilon(1e-4));
}

TEST_CASE("in every built-in table resistance falls with size and copper stays copper") {
    // 1/58 ohm mm2/m at 20 C (IACS) is the least; stranding, class 5 bunching and the allowance of maxima add
    // up to a fifth.
    for (const auto& [id, table] : built_in().tables) {
        INFO(id);
        for (std::size_t i = 0; i < table.rows.size(); ++i) {
            INFO(table.rows[i].size);
            if (i > 0) CHECK(table.rows[i].resistance < table.rows[i - 1].resistance);
            const double resistivity =
                resistance_at(table, table.rows[i], Celsius(20)).value() * *section_mm2(table.rows[i].size);
            CHECK(resistivity > 0.995 / 58);
            CHECK(resistivity < 1.2 / 58);
        }
    }
}
