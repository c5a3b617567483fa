#include "rillwatt/finding/input_error.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

TEST_CASE("an input error says where, what was found, what was expected, and shows the line") {
    const InputError error{
        {"site.toml", 12}, "unknown key `colour`", "one of `id`, `color`", "colour = 3\t# hm"};
    CHECK(input_error_text(error) ==
          "site.toml:12: error: unknown key `colour`; expected one of `id`, `color`\n"
          "    colour = 3 # hm\n");
}

TEST_CASE("an input error without line or source is still whole") {
    CHECK(input_error_text({{"site.toml", 0}, "no such file", "", ""}) == "site.toml: error: no such file\n");
}

TEST_CASE("a file name or a line cannot steer the terminal") {
    const InputError error{{"a\x1b[31m.toml", 1}, "x", "y", "id = \"\x1b]0;t\x07\""};
    CHECK(input_error_text(error) ==
          "a\\x1b[31m.toml:1: error: x; expected y\n    id = \"\\x1b]0;t\\x07\"\n");
}

TEST_CASE("source lines are filled in from the text of the file they name") {
    std::vector<InputError> errors{{{"a", 2}, "", "", ""},
                                   {{"b", 1}, "", "", ""},
                                   {{"a", 9}, "", "", ""},
                                   {{"a", 3}, "", "", "kept"},
                                   {{"a", 3}, "", "", ""}};
    add_source_lines(errors, "a", "first\r\nsecond\r\nthird");
    CHECK(errors[0].source_line == "second");
    CHECK(errors[1].source_line.empty());
    CHECK(errors[2].source_line.empty());
    CHECK(errors[3].source_line == "kept");
    CHECK(errors[4].source_line == "third");
}

TEST_CASE("a very long line is cut between two characters") {
    std::string line(159, 'x');
    line += "\u00e9\u00e9";
    CHECK(shortened_line(line) == std::string(159, 'x') + " ...");
    CHECK(shortened_line(std::string(160, 'x')) == std::string(160, 'x'));
}

TEST_CASE("the nearest spelling is offered only when it is near") {
    const std::vector<std::string> keys{"id", "model", "from", "length", "cable", "mounting"};
    CHECK(nearest_spelling("lenght", keys) == "length");
    CHECK(nearest_spelling("modle", keys) == "model");
    CHECK(nearest_spelling("Cable", keys) == "cable");
    CHECK(nearest_spelling("cables", keys) == "cable");
    CHECK(nearest_spelling("form", keys) == "from");
    CHECK(nearest_spelling("colour", keys) == std::nullopt);
    CHECK(nearest_spelling("x", keys) == std::nullopt);
    CHECK(nearest_spelling("", keys) == std::nullopt);
    CHECK(nearest_spelling("model", {}) == std::nullopt);
    CHECK(nearest_spelling(std::string(100000, 'm'), keys) == std::nullopt);
}

TEST_CASE("a name that the word begins is nearer than one that differs by a letter") {
    CHECK(nearest_spelling("sub-5w", {"sub-3w", "sub-5w-60-warm", "sub-5w-60", "sub-5w-40"}) == "sub-5w-60");
    CHECK(nearest_spelling("path", {"bath", "path-2w"}) == "path-2w");
    CHECK(nearest_spelling("sub-5", {"sub-5w-60", "sub-3"}) == "sub-3"); // 5w is another word
    CHECK(nearest_spelling("T1", {"T1-old", "T2"}) == "T2");             // too short to tell
}

TEST_CASE("of two near spellings the nearer wins, of two as near the one with the longer beginning, then the "
          "first") {
    CHECK(nearest_spelling("mag-151", {"mat-151", "mag-150"}) == "mag-150");
    CHECK(nearest_spelling("sub-5w", {"rub-5w", "sub-3w"}) == "sub-3w");
    CHECK(nearest_spelling("falls-1", {"falls-22", "falls-12"}) == "falls-12");
    CHECK(nearest_spelling("mag-400", {"mag-150", "mag-300", "mag-600"}) == "mag-300");
}

TEST_CASE("invisible characters and broken text are made visible") {
    CHECK(printable("plain \u00e9 \u6c34 \U0001F4A7") == "plain \u00e9 \u6c34 \U0001F4A7");
    CHECK(printable("a\tb\nc\r") == "a\\tb\\nc\\r");
    CHECK(printable(std::string("a\0b", 3)) == "a\\x00b");
    CHECK(printable("\x7f") == "\\x7f");
    CHECK(printable("\u0085") == "\\u{0085}");
    CHECK(printable("a\u202eb") == "a\\u{202e}b");
    CHECK(printable("\ufeff") == "\\u{feff}");
    CHECK(printable("\xff") == "\\xff");
    CHECK(printable("\xc3") == "\\xc3");                   // cut off
    CHECK(printable("\xc0\x80") == "\\xc0\\x80");          // overlong
    CHECK(printable("\xed\xa0\x80") == "\\xed\\xa0\\x80"); // a surrogate
    CHECK(is_printable("falls-1"));
    CHECK(is_printable("\u00e9 \u6c34 \U0001F4A7"));
    CHECK_FALSE(is_printable("falls\n1"));
    CHECK_FALSE(is_printable("a\u202eb"));
    CHECK_FALSE(is_printable("cut \xc3"));
}
