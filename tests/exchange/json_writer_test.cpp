#include "rillwatt/exchange/json_writer.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <random>

using rillwatt::JsonWriter;

namespace {

template<class T>
std::string alone(T value) {
    JsonWriter json;
    json.value(value);
    return json.take();
}

std::string quoted(std::string_view text) {
    std::string out;
    rillwatt::append_json_string(out, text);
    return out;
}

} // namespace

TEST_CASE("numbers are the shortest text that reads back to the same double") {
    CHECK(alone(0.1) == "0.1");
    CHECK(alone(12.0) == "12");
    CHECK(alone(-0.0) == "0");
    for (double number : {0.1 + 0.2, 1.0 / 3, 12.345678901234567, 6.02e23, 1e-300, -7.25})
        CHECK(std::strtod(alone(number).c_str(), nullptr) == number);
}

TEST_CASE("numbers of every size are written as the standard library writes its shortest") {
    std::mt19937_64 random(8259);
    std::uniform_real_distribution<double> exponent(-9, 18);
    for (int i = 0; i < 20000; ++i) {
        const double size = std::pow(10, exponent(random));
        for (double number : {size, -size, std::round(size), std::round(size * 100) / 100}) {
            std::array<char, 64> digits{};
            const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), number);
            if (number != 0) CHECK(alone(number) == std::string(digits.data(), end.ptr));
        }
    }
}

TEST_CASE("a number that comes again is written as before") {
    JsonWriter json;
    json.begin_array(JsonWriter::Set::line);
    for (int round = 0; round < 3; ++round)
        for (double number : {0.1, 12.0, 14.700000000000001, -0.1, 0.0})
            json.value(number);
    json.end();
    CHECK(json.take() == "[0.1, 12, 14.700000000000001, -0.1, 0, 0.1, 12, 14.700000000000001, -0.1, 0, "
                         "0.1, 12, 14.700000000000001, -0.1, 0]\n");
}

TEST_CASE("what is not a finite number becomes null") {
    CHECK(alone(std::numeric_limits<double>::quiet_NaN()) == "null");
    CHECK(alone(std::numeric_limits<double>::infinity()) == "null");
    CHECK(alone(-std::numeric_limits<double>::infinity()) == "null");
}

TEST_CASE("strings are escaped and always UTF-8") {
    CHECK(quoted("plain") == "\"plain\"");
    CHECK(quoted("a\"b\\c") == R"("a\"b\\c")");
    CHECK(quoted("\n\t\r\x01\x1b\x7f") == R"("\n\t\r\u0001\u001b\u007f")");
    CHECK(quoted("Fußweg 池") == "\"Fußweg 池\"");
    CHECK(quoted("\xff") == "\"\xEF\xBF\xBD\"");
    CHECK(quoted("\xC0\xAF") == "\"\xEF\xBF\xBD\xEF\xBF\xBD\"");                 // overlong slash
    CHECK(quoted("\xED\xA0\x80") == "\"\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD\""); // half a surrogate pair
    CHECK(quoted("\xE2\x82") == "\"\xEF\xBF\xBD\xEF\xBF\xBD\"");                 // cut short
    CHECK(quoted(std::string_view("a\0b", 3)) == R"("a\u0000b")");
}

TEST_CASE("objects stand on lines, leaves on one line") {
    JsonWriter json;
    json.begin_object();
    json.member("a", 1);
    json.key("list");
    json.begin_array();
    json.begin_object(JsonWriter::Set::line);
    json.member("x", 1.5);
    json.key("in");
    json.begin_array();
    json.value(true);
    json.null();
    json.end();
    json.end();
    json.end();
    json.key("none");
    json.begin_array();
    json.end();
    json.member_or_null("empty", "");
    json.end();
    CHECK(json.take() == "{\n  \"a\": 1,\n  \"list\": [\n    { \"x\": 1.5, \"in\": [true, null] }\n  ],\n"
                         "  \"none\": [],\n  \"empty\": null\n}\n");
}
