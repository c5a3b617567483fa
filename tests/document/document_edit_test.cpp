#include "rillwatt/document/document.hpp"
#include "rillwatt/document/document_edit.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

std::string edited(std::string_view text, const std::vector<KeyChange>& changes,
                   std::string_view appended = {}) {
    const LoadResult<std::string> result = edited_document(text, "site.toml", changes, appended);
    for (const InputError& error : result.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(result);
    return *result.value;
}

std::string refusal(std::string_view text, const std::vector<KeyChange>& changes,
                    std::string_view appended = {}) {
    const LoadResult<std::string> result = edited_document(text, "site.toml", changes, appended);
    REQUIRE_FALSE(result);
    std::string words;
    for (const InputError& error : result.errors)
        words += input_error_text(error);
    return words;
}

const KeyChange cable_of_a{"run", "A", "cable", "\"12/2\""};

} // namespace

TEST_CASE("an open key is written below the last one of its part, indented like it") {
    CHECK(
        edited("[[run]]\n  id = \"A\" # first\n  from = \"T\"   # the feed\n\n# next\n[[run]]\nid = \"B\"\n",
               {cable_of_a, {"run", "B", "tap", "13"}}) ==
        "[[run]]\n  id = \"A\" # first\n  from = \"T\"   # the feed\n  cable = \"12/2\"\n\n# "
        "next\n[[run]]\nid = \"B\"\ntap = 13\n");
}

TEST_CASE("a key that is there has its value replaced and nothing else") {
    CHECK(edited("[[run]]\nid=\"A\"\ncable   =\t'10/2'\t# thick\nfrom = \"T\"", {cable_of_a}) ==
          "[[run]]\nid=\"A\"\ncable   =\t\"12/2\"\t# thick\nfrom = \"T\"");
}

TEST_CASE("several keys of one part come in the order asked for") {
    CHECK(edited("[[run]]\nid = \"A\"\n", {{"run", "A", "tap", "13"}, cable_of_a}) ==
          "[[run]]\nid = \"A\"\ntap = 13\ncable = \"12/2\"\n");
}

TEST_CASE("line ends, byte order mark and a missing last line end are kept") {
    CHECK(edited("\xEF\xBB\xBF[[run]]\r\nid = \"A\"\r\n\r\n# \u6c34", {cable_of_a}) ==
          "\xEF\xBB\xBF[[run]]\r\nid = \"A\"\r\ncable = \"12/2\"\r\n\r\n# \u6c34");
    CHECK(edited("[[run]]\r\nid = \"A\"", {cable_of_a}) == "[[run]]\r\nid = \"A\"\r\ncable = \"12/2\"");
    CHECK(edited("[[run]]\nid = \"A\"", {cable_of_a}) == "[[run]]\nid = \"A\"\ncable = \"12/2\"");
}

TEST_CASE("other alphabets before the value on the same line do not shift the place") {
    CHECK(edited("run = [{ name = \"\u00e9\u6c34\U0001F4A7\", id = \"A\", cable = \"\u00e9\" }, { id = \"B\" "
                 "}] # \u00e9",
                 {cable_of_a}) == "run = [{ name = \"\u00e9\u6c34\U0001F4A7\", id = \"A\", cable = \"12/2\" "
                                  "}, { id = \"B\" }] # \u00e9");
}

TEST_CASE("parts in an inline list are edited within their braces") {
    CHECK(edited("run = [\n  { id = \"A\", from = \"T\" }, # one\n  {id=\"B\"},\n]\n[site]\nname = \"x\"\n",
                 {cable_of_a, {"run", "B", "tap", "13"}}) ==
          "run = [\n  { id = \"A\", from = \"T\", cable = \"12/2\" }, # one\n  {id=\"B\", tap = "
          "13},\n]\n[site]\nname = \"x\"\n");
}

TEST_CASE("an id is compared by what it says, not by how it is quoted") {
    CHECK(edited("[[run]]\n\"id\" = 'A'\n[[run]]\nid = \"\\u0042\"\n",
                 {cable_of_a, {"run", "B", "tap", "13"}}) ==
          "[[run]]\n\"id\" = 'A'\ncable = \"12/2\"\n[[run]]\nid = \"\\u0042\"\ntap = 13\n");
}

TEST_CASE("hostile ids and values on several lines are stepped over") {
    const char* text = "[[run]]\nid = \"[[run]] # \\\" id = 'A'\"\nnote = '''\n[[run]]\nid = \"A\"\n'''\n"
                       "[[run]]\nid = \"A\"\nlist = [ # ]\n  1, \"]\",\n  ]\n";
    CHECK(edited(text, {cable_of_a}) == std::string(text) + "cable = \"12/2\"\n");
    CHECK(edited(text, {{"run", "[[run]] # \" id = 'A'", "tap", "13"}}) ==
          "[[run]]\nid = \"[[run]] # \\\" id = 'A'\"\nnote = '''\n[[run]]\nid = \"A\"\n'''\ntap = 13\n"
          "[[run]]\nid = \"A\"\nlist = [ # ]\n  1, \"]\",\n  ]\n");
}

TEST_CASE("a part with tables of its own gets the key above them") {
    CHECK(edited("[[run]]\nid = \"A\"\n[run.more]\nx = 1\n", {cable_of_a}) ==
          "[[run]]\nid = \"A\"\ncable = \"12/2\"\n[run.more]\nx = 1\n");
}

TEST_CASE("keys of a single table are set the same way") {
    CHECK(edited("rillwatt = 1\n[site]\nname = \"x\"\n", {{"site", "", "units", "\"m\""}}) ==
          "rillwatt = 1\n[site]\nname = \"x\"\nunits = \"m\"\n");
}

TEST_CASE("new parts are appended behind a blank line in the file's line ends") {
    CHECK(edited("a = 1\r\n", {}, "[[fixture]]\nid = \"x\"\n") ==
          "a = 1\r\n\r\n[[fixture]]\r\nid = \"x\"\r\n");
    CHECK(edited("a = 1", {}, "[[fixture]]\nid = \"x\"\n") == "a = 1\n\n[[fixture]]\nid = \"x\"\n");
    CHECK(edited("", {}, "[[fixture]]\nid = \"x\"\n") == "[[fixture]]\nid = \"x\"\n");
    CHECK(edited("[[fixture]]\nid = \"w\"\n", {}, "[[fixture]]\nid = \"x\"\n") ==
          "[[fixture]]\nid = \"w\"\n\n[[fixture]]\nid = \"x\"\n");
}

TEST_CASE("what cannot be edited safely is refused") {
    CHECK(refusal("[[run]]\nid = \"B\"\n", {cable_of_a}) ==
          "site.toml:1: error: `cable` of A cannot be set where it stands; expected a file written so that "
          "it can be edited "
          "without touching the rest\n    [[run]]\n");
    CHECK(refusal("[[run]]\nid = \"A\"\ncable.x = 1\n", {cable_of_a})
              .starts_with("site.toml:2: error: `cable` of A cannot be set"));
    // A list of inline tables cannot be continued by `[[fixture]]`.
    CHECK(refusal("fixture = [{ id = \"w\" }]\n", {}, "[[fixture]]\nid = \"x\"\n")
              .starts_with("site.toml:1: error: changes that cannot be written"));
    CHECK(refusal("a = 1\n", {}, "not toml")
              .starts_with("site.toml:1: error: text to append that is not TOML"));
    CHECK(refusal("[[run]]\nid = \"A\"\n", {{"run", "A", "tap", "13\nevil = 1"}})
              .starts_with("site.toml:1: error: changes that cannot"));
    CHECK(refusal("[[run]]\nid = \"A\"\n", {{"run", "A", "tap", "13 #"}, {"run", "A", "tap", "14"}})
              .starts_with("site.toml:1: error: changes that cannot"));
    CHECK(refusal("broken = \n", {cable_of_a}).starts_with("site.toml:1: error: not TOML"));
}

TEST_CASE("texts and numbers survive the way into TOML and back") {
    for (const std::string text : {"", "12/2", "say \"hi\" \\ there", "tab\t line\n \x7f \u00e9 \u6c34"}) {
        const LoadResult<Document> read = parse_document("x = " + toml_string(text), "");
        REQUIRE(read);
        CHECK(*read.value->root().find("x")->text() == text);
    }
    CHECK(toml_number(13) == "13");
    CHECK(toml_number(13.5) == "13.5");
    for (double number : {0.3048, 1e-9, 1e21, -0.1, 123456.789}) {
        const LoadResult<Document> read = parse_document("x = " + toml_number(number), "");
        REQUIRE(read);
        CHECK(*read.value->root().find("x")->number() == number);
    }
}

TEST_CASE("ten thousand parts are edited in one go") {
    std::string text;
    std::vector<KeyChange> changes;
    for (int i = 0; i < 10000; ++i) {
        text += "[[splice]]\nid = \"S" + std::to_string(i) + "\"\n";
        changes.push_back({"splice", "S" + std::to_string(i), "cable", "\"12/2\""});
    }
    const std::string result = edited(text, changes);
    CHECK(result.size() == text.size() + 10000 * std::string("cable = \"12/2\"\n").size());
    CHECK(result.starts_with("[[splice]]\nid = \"S0\"\ncable = \"12/2\"\n[[splice]]"));
}
