#include "rillwatt/quantity/plain_ascii.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <type_traits>

using namespace rillwatt;

namespace {

template<class A, class B>
concept Addable = requires(A a, B b) {
    a + b;
};

static_assert(Addable<Volts, Volts>);
static_assert(!Addable<Volts, Amperes>);
static_assert(!Addable<Watts, VoltAmperes>, "real and apparent power do not add");
static_assert(std::is_same_v<decltype(Volts(1) / Amperes(1)), Ohms>);
static_assert(std::is_same_v<decltype(VoltAmperes(1) * PowerFactor(1)), Watts>);

struct Spelling {
    const char* text;
    double metres;
};

} // namespace

TEST_CASE("every spelling of a length is read") {
    // 1 ft = 0.3048 m exactly: NIST SP 811 (2008) appendix B.6, international foot of 1959.
    const Spelling spellings[] = {
        {"35 ft", 35 * 0.3048},
        {"35ft", 35 * 0.3048},
        {"12.5 ft", 12.5 * 0.3048},
        {"12 ft 6 in", 12.5 * 0.3048},
        {"12 feet 6 inches", 12.5 * 0.3048},
        {"1 foot 1 inch", 13 * 0.0254},
        {"12' 6\"", 12.5 * 0.3048},
        {"12'6\"", 12.5 * 0.3048},
        {"12'6 1/2\"", 150.5 * 0.0254},
        {"12'-6\"", -1}, // refused below; a hyphen is no separator
        {"12' 6-1/2\"", 150.5 * 0.0254},
        {"12\u20196\u201d", 12.5 * 0.3048},
        {"12\u20326\u2033", 12.5 * 0.3048},
        {"6\u00bd in", 6.5 * 0.0254},
        {"6 \u00be\"", 6.75 * 0.0254},
        {"3/8 in", 0.375 * 0.0254},
        {"18 in", 18 * 0.0254},
        {"4.5 m", 4.5},
        {"450 mm", 0.45},
        {"60 cm", 0.6},
        {".5 m", 0.5},
        {"0 ft", 0},
        {"  7 m  ", 7},
        {"7\u00a0m", 7},
        {"+4 in", 4 * 0.0254},
        {"-4 in", -4 * 0.0254},
        {"-1 ft 6 in", -18 * 0.0254},
        {"\u22124 in", -4 * 0.0254},
    };
    for (const Spelling& spelling : spellings) {
        INFO(spelling.text);
        const std::optional<Metres> length = parse_length(spelling.text);
        if (spelling.metres == -1) {
            CHECK_FALSE(length);
            continue;
        }
        REQUIRE(length);
        CHECK(length->value() == Approx(spelling.metres).epsilon(1e-15).margin(1e-15));
    }
}

TEST_CASE("what is no length, or could be two, is refused") {
    const char* texts[] = {
        "",          " ",        "35",      "ft",        "ft 35",        "35 yd",     "35 M",
        "thirty ft", "1e3 ft",   "0x10 ft", "inf m",     "nan m",        "-inf ft",   "1,5 m",
        "1.2.3 m",   "12 ft 6",  "12'6",    "12' 12\"",  "12.5' 6\"",    "6 in 1 ft", "12 ft -6 in",
        "1/0 in",    "6 5/4 in", "--4 in",  "4 m 50 cm", "12 ft 6 in 3", "12 ft 6 m", "5 m m",
        "1 2 ft",
    };
    for (const char* text : texts) {
        INFO(text);
        CHECK_FALSE(parse_length(text));
    }
    CHECK_FALSE(parse_length(std::string(400, '9') + " m"));
    CHECK_FALSE(parse_length(std::string("4 m\0", 4)));
}

TEST_CASE("temperatures carry their scale") {
    CHECK(parse_temperature("75 C")->value() == 75);
    CHECK(parse_temperature("75C")->value() == 75);
    CHECK(parse_temperature("75 \u00b0C")->value() == 75);
    CHECK(parse_temperature("-10 C")->value() == -10);
    // NIST SP 811 (2008) appendix B.9: t/C = (t/F - 32)/1.8
    CHECK(parse_temperature("68 F")->value() == Approx(20).epsilon(1e-15));
    CHECK(parse_temperature("-40 F")->value() == Approx(-40).epsilon(1e-15));
    for (const char* text : {"", "75", "C", "75 K", "75 C C", "nan C", "inf F", "75 c"}) {
        INFO(text);
        CHECK_FALSE(parse_temperature(text));
    }
}

TEST_CASE("lengths are written as people write them") {
    CHECK(length_text(feet(12.5), LengthUnit::feet) == "12 ft 6 in");
    CHECK(length_text(feet(12), LengthUnit::feet) == "12 ft");
    CHECK(length_text(inches(6), LengthUnit::feet) == "6 in");
    CHECK(length_text(Metres(0), LengthUnit::feet) == "0 ft");
    CHECK(length_text(inches(-4), LengthUnit::feet) == "-4 in");
    CHECK(length_text(inches(-0.4), LengthUnit::feet) == "0 ft");
    CHECK(length_text(inches(11.6), LengthUnit::feet) == "1 ft");
    CHECK(length_text(Metres(3.81), LengthUnit::metres) == "3.81 m");
    CHECK(length_text(Metres(4), LengthUnit::metres) == "4 m");
    CHECK(decimal_length_text(feet(12.5), LengthUnit::feet) == "12.5 ft");
    CHECK(decimal_length_text(Metres(3.81), LengthUnit::metres, 2) == "3.81 m");
}

TEST_CASE("numbers are written without locale, exponent or negative zero") {
    CHECK(fixed_text(-0.04, 1) == "0.0");
    CHECK(fixed_text(-0.05001, 1) == "-0.1");
    CHECK(fixed_text(1234567.25, 1) == "1234567.2");
    CHECK(trimmed_text(12, 2) == "12");
    CHECK(trimmed_text(12.5, 2) == "12.5");
    CHECK(trimmed_text(12.25, 2) == "12.25");
    CHECK(trimmed_text(100, 2) == "100");
    CHECK(trimmed_text(100, 0) == "100");
    CHECK(trimmed_text(-0.001, 2) == "0");
    CHECK(money_text(Money(512.4), "USD") == "512.40 USD");
}

TEST_CASE("a length written in metres reads back as itself") {
    for (double metres : {0.01, 0.5, 3.81, 27.43, 9999.99}) {
        INFO(metres);
        CHECK(parse_length(length_text(Metres(metres), LengthUnit::metres))->value() ==
              Approx(metres).epsilon(1e-12));
    }
}

TEST_CASE("a depth is written in inches or metres") {
    CHECK(depth_text(inches(24), LengthUnit::feet) == "24 in");
    CHECK(depth_text(inches(4.5), LengthUnit::feet) == "4.5 in");
    CHECK(depth_text(inches(18), LengthUnit::metres) == "0.46 m");
}

TEST_CASE("fixed decimals round the double's exact value, ties to even") {
    struct Row {
        double value;
        int decimals;
        const char* text;
    };
    const Row rows[] = {{0.125, 2, "0.12"},
                        {0.375, 2, "0.38"},
                        {2.5, 0, "2"},
                        {3.5, 0, "4"},
                        {0.5, 0, "0"},
                        {1.005, 2, "1.00"},    // 1.00499...
                        {0.995, 2, "0.99"},    // 0.99499...
                        {99.995, 2, "100.00"}, // 99.99500...
                        {4.9e-324, 3, "0.000"},
                        {9007199254740993.0, 1, "9007199254740992.0"},
                        {1e22, 0, "10000000000000000000000"},
                        {-0.125, 1, "-0.1"}};
    for (const Row& row : rows) {
        INFO(row.value << " with " << row.decimals);
        CHECK(fixed_text(row.value, row.decimals) == row.text);
    }
}

TEST_CASE("printable ASCII is told from everything else at every place of a text") {
    for (std::size_t size = 0; size <= 19; ++size)
        CHECK(is_plain_ascii(std::string(size, 'x')));
    for (std::size_t size = 1; size <= 19; ++size)
        for (std::size_t at = 0; at < size; ++at)
            for (int byte = 0; byte < 256; ++byte) {
                std::string text(size, '~');
                text[at] = static_cast<char>(byte);
                INFO(size << " bytes, " << byte << " at " << at);
                if (is_plain_ascii(text) != (byte >= 0x20 && byte <= 0x7E)) FAIL_CHECK();
            }
}
