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

namespace {

std::string utf8(char32_t c) {
    const auto byte = [](char32_t value) { return static_cast<char>(static_cast<unsigned char>(value)); };
    if (c < 0x80) return {byte(c)};
    if (c < 0x800) return {byte(0xC0 | c >> 6), byte(0x80 | (c & 0x3F))};
    if (c < 0x10000) return {byte(0xE0 | c >> 12), byte(0x80 | (c >> 6 & 0x3F)), byte(0x80 | (c & 0x3F))};
    return {byte(0xF0 | c >> 18), byte(0x80 | (c >> 12 & 0x3F)), byte(0x80 | (c >> 6 & 0x3F)),
            byte(0x80 | (c & 0x3F))};
}

/// Extensible Markup Language (XML) 1.0, fifth edition, 2.2: production [2] Char.
bool is_xml_char(char32_t c) {
    return c == 0x9 || c == 0xA || c == 0xD || (c >= 0x20 && c <= 0xD7FF) || (c >= 0xE000 && c <= 0xFFFD) ||
           (c >= 0x10000 && c <= 0x10FFFF);
}

} // namespace

TEST_CASE("no character that XML forbids reaches markup, all others are kept or shown") {
    for (char32_t c = 0; c <= 0x10FFFF; ++c) {
        const std::string raw = utf8(c);
        const std::string text = html_text("a" + raw + "b");
        const bool kept = text == "a" + raw + "b";
        if (kept && !is_xml_char(c)) FAIL_CHECK("kept: " << static_cast<unsigned>(c));
        if (text.size() < 3) FAIL_CHECK("lost: " << static_cast<unsigned>(c));
    }
    CHECK(html_text("pond\xEF\xBF\xBE") == "pond\xEF\xBF\xBD");
    CHECK(html_text("\xEF\xBF\xBF\xEF\xBF\xBFpond") == "\xEF\xBF\xBD\xEF\xBF\xBDpond");
    CHECK(html_text("just outside \xEF\xBF\xBD \xEE\x80\x80") == "just outside \xEF\xBF\xBD \xEE\x80\x80");
    CHECK(part_attribute("light\xEF\xBF\xBF") == " data-part=\"light\xEF\xBF\xBD\"");
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
