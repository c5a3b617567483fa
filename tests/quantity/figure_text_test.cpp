#include "rillwatt/quantity/figure_text.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

TEST_CASE("a length that is the most allowed is never rounded up") {
    struct Row {
        double feet;
        const char* text;
    };
    for (const Row& row : {Row{7.49, "7.4 ft"}, Row{9.99, "9.9 ft"}, Row{10, "10 ft"}, Row{99.9, "99 ft"},
                           Row{100, "100 ft"}, Row{104.9, "100 ft"}, Row{105, "105 ft"}, Row{499.9, "495 ft"},
                           Row{584.5, "580 ft"}, Row{880.3, "880 ft"}, Row{3739.9, "3730 ft"}}) {
        INFO(row.feet);
        CHECK(most_length_text(feet(row.feet), LengthUnit::feet) == row.text);
    }
    CHECK(most_length_text(Metres(178.16), LengthUnit::metres) == "175 m");
}
