#include "rillwatt/document/value_lines.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

constexpr std::string_view text = "[site]\n"
                                  "name = \"x\"\n"
                                  "[[run]]\n"
                                  "id = \"A\"\n"
                                  "tap = 13.5\n"
                                  "[cable.\"12/2\"]\n"
                                  "table = \"t\"\n"
                                  "size = \"13 AWG\"\n"
                                  "[[run]]\n"
                                  "id = \"B\"\n";

std::vector<InputError> located(InputError error) {
    std::vector<InputError> errors{std::move(error)};
    locate_values(errors, "site.toml", text);
    return errors;
}

} // namespace

TEST_CASE("an error about a value of a part goes to the line of that value and shows it") {
    const auto tap = located({{"site.toml", 3}, "found", "expected", {}, "tap"});
    CHECK(tap[0].location.line == 5);
    CHECK(tap[0].source_line == "tap = 13.5");
    const auto size = located({{"site.toml", 6}, "found", "expected", {}, "size"});
    CHECK(size[0].location.line == 8);
    CHECK(size[0].source_line == "size = \"13 AWG\"");
}

TEST_CASE("an error without a key, of a part without it, or of another file stays where it is") {
    const auto whole = located({{"site.toml", 3}, "found", "expected", {}, {}});
    CHECK(whole[0].location.line == 3);
    CHECK(whole[0].source_line == "[[run]]");
    CHECK(located({{"site.toml", 9}, "found", "expected", {}, "tap"})[0].location.line == 9);
    const auto other = located({{"stock.toml", 3}, "found", "expected", {}, "tap"});
    CHECK(other[0].location.line == 3);
    CHECK(other[0].source_line.empty());
}

TEST_CASE("errors are located once, however often it is asked for") {
    std::vector<InputError> errors = located({{"site.toml", 3}, "found", "expected", {}, "id"});
    CHECK(errors[0].location.line == 4);
    locate_values(errors, "site.toml", text);
    CHECK(errors[0].location.line == 4);
}
