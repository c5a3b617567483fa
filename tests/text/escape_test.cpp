#include "rillwatt/text/escape.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <vector>

using namespace rillwatt;

TEST_CASE("markup in a name stays text in a page") {
    CHECK(html_text("<script>alert('x')</script>") == "&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt;");
    CHECK(html_text("Smith & \"Sons\"") == "Smith &amp; &quot;Sons&quot;");
    CHECK(html_text("H\xC3\xBCgel") == "H\xC3\xBCgel");
}

TEST_CASE("control characters and broken UTF-8 never reach a page or a cell raw") {
    for (const std::string text : {"bell\a", "esc\x1b[31m", "nul\x01", "broken\xff"}) {
        CAPTURE(text);
        CHECK(html_text(text).find_first_of("\a\x1b\x01\xff") == std::string::npos);
        CHECK(csv_text(text).find_first_of("\a\x1b\x01\xff") == std::string::npos);
    }
}

TEST_CASE("a cell that a spreadsheet would run is neutralised") {
    CHECK(csv_text("=1+1") == "'=1+1");
    CHECK(csv_text("+1") == "'+1");
    CHECK(csv_text("-1") == "'-1");
    CHECK(csv_text("@SUM(A1)") == "'@SUM(A1)");
    CHECK(csv_text("  =1+1") == "'  =1+1");
    CHECK(csv_text("\t=1").front() == '\'');
    CHECK(csv_text("\r=1").front() == '\'');
    CHECK(csv_text("a=b") == "a=b"); // just outside: not at the beginning
    CHECK(csv_text("") == "");
}

TEST_CASE("quotes and commas in a cell follow RFC 4180") {
    CHECK(csv_text("12/2, direct burial") == "\"12/2, direct burial\"");
    CHECK(csv_text("18\" deep") == "\"18\"\" deep\"");
    CHECK(csv_text("=HYPERLINK(\"x\",\"y\")") == "\"'=HYPERLINK(\"\"x\"\",\"\"y\"\")\"");
    CHECK(csv_record(std::vector<std::string>{"a", "1.5"}) == "a,1.5\r\n");
}

TEST_CASE("numbers stay numbers in a cell") {
    CHECK(csv_number(-1.5, 2) == "-1.5");
    CHECK(csv_number(512.4, 2) == "512.4");
    CHECK(csv_number(std::numeric_limits<double>::quiet_NaN(), 2) == "");
}
