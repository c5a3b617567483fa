#include "rillwatt/text/line_writer.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace rillwatt;

namespace {

std::string at_right(std::string text, std::size_t columns) {
    return text.size() < columns ? std::string(columns - text.size(), ' ') + text : text;
}

} // namespace

TEST_CASE("a figure is the fixed number with its unit behind blanks") {
    constexpr double infinite = std::numeric_limits<double>::infinity();
    for (const double value : {0.0, -0.0, -0.001, 9.995, -12.345, 998.999, 999.0, 1234.5, 99999.0,
                               123456789012.0, 9e15, 1e22, 1e300, infinite, -infinite, std::nan("")})
        for (const std::string_view unit : {"", " V", " of a garden as large as this"})
            for (const std::size_t columns : {0u, 1u, 6u, 7u, 8u, 16u, 32u, 80u, 300u})
                for (int decimals = 0; decimals <= 4; ++decimals) {
                    std::string out = "left as it is";
                    LineWriter line(out);
                    line.text("x"); // a figure too wide must not write over what stands before it
                    line.figure(value, {decimals, unit}, columns);
                    line.end_line();
                    INFO(value << unit << " with " << decimals << " in " << columns);
                    CHECK(out == "left as it isx" +
                                     at_right(fixed_text(value, decimals) + std::string(unit), columns) +
                                     '\n');
                }
}

TEST_CASE("a line of any length comes out as its cells in their order") {
    std::string expected;
    std::string out;
    LineWriter line(out);
    for (std::size_t bytes : {0u, 1u, 200u, 55u, 256u, 257u, 1000u, 3u}) {
        line.text(std::string(bytes, 'x'));
        line.blanks(bytes / 2);
        line.right("y", bytes);
        line.end_line();
        expected += std::string(bytes, 'x') + std::string(bytes / 2, ' ') + at_right("y", bytes) + '\n';
        CHECK(out == expected);
    }
}
