#include "rillwatt/text/text_style.hpp"
#include "rillwatt/text/utf8.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

TEST_CASE("a line takes as many words as fit and no more") {
    CHECK(wrapped("one two three", 7, "", "") == "one two\nthree\n");
    CHECK(wrapped("one two three", 13, "", "") == "one two three\n");
    CHECK(wrapped("one two three", 12, "", "") == "one two\nthree\n");
    CHECK(wrapped("one two three", 10, "- ", "    ") == "- one two\n    three\n");
    CHECK(wrapped("", 10, "- ", "  ") == "- \n");
}

TEST_CASE("a number keeps its unit") {
    CHECK(wrapped("it gets 12.75 V now", 15, "", "") == "it gets 12.75 V\nnow\n");
    CHECK(wrapped("it gets 12.75 V now", 14, "", "") == "it gets\n12.75 V now\n");
    CHECK(wrapped("it gets 12.75 V.", 14, "", "") == "it gets\n12.75 V.\n");
    CHECK(wrapped("the set of V now", 12, "", "") == "the set of V\nnow\n"); // no number, no glue
}

TEST_CASE("a word longer than a line is broken between characters") {
    CHECK(wrapped("aaaaaaaaaaaaaaaaaaaa", 10, "", "") == "aaaaaaaaaa\naaaaaaaaaa\n");
    CHECK(wrapped("池池池池池池", 11, "", "") == "池池池池池\n池\n");
}

TEST_CASE("colour codes come only when asked for") {
    CHECK(inked({.colour = false, .width = 80}, Ink::error, "error") == "error");
    CHECK(inked({.colour = true, .width = 80}, Ink::error, "error") == "\x1b[1;31merror\x1b[0m");
    CHECK(inked({.colour = true, .width = 80}, Ink::plain, "word") == "word");
}

TEST_CASE("columns are counted as a terminal shows them") {
    CHECK(display_width("plain") == 5);
    CHECK(display_width("Fußweg") == 6);
    CHECK(display_width("├─ A") == 4);
    CHECK(display_width("池") == 2);         // East Asian wide
    CHECK(display_width("e\u0301") == 1);    // e with a combining acute
    CHECK(display_width("\xff\xfe") == 2);   // broken bytes count one each
    CHECK(display_width("\U0001F4A1") == 2); // pictograph
}

TEST_CASE("clipped text ends in an ellipsis inside its columns") {
    CHECK(clipped("falls-1", 7) == "falls-1");
    CHECK(clipped("falls-12", 7) == "falls-…");
    CHECK(clipped("池池池池", 6) == "池池…");
    CHECK(clipped("abc", 0).empty());
}
