#include "rillwatt/document/document.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

Document parsed(std::string_view text) {
    LoadResult<Document> result = parse_document(text, "site.toml");
    for (const InputError& error : result.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(result);
    return std::move(*result.value);
}

std::string error_of(std::string_view text, const DocumentLimits& limits = {}) {
    const LoadResult<Document> result = parse_document(text, "site.toml", limits);
    REQUIRE_FALSE(result);
    REQUIRE(result.errors.size() == 1);
    return input_error_text(result.errors.front());
}

} // namespace

TEST_CASE("every kind of value is read with its line") {
    const Document document = parsed("text = \"a\\tb\"\n"
                                     "whole = -4\n"
                                     "real = 1.5\n"
                                     "yes = true\n"
                                     "list = [ 1,\n"
                                     "  \"two\" ]\n"
                                     "table = { x = 1 }\n"
                                     "day = 2026-05-01\n");
    const Table& root = document.root();
    REQUIRE(root.entries.size() == 7);
    CHECK(*root.find("text")->text() == "a\tb");
    CHECK(*root.find("whole")->number() == -4);
    CHECK(*root.find("real")->number() == 1.5);
    CHECK(*root.find("yes")->boolean());
    REQUIRE(root.find("list")->array());
    CHECK((*root.find("list")->array())[1].line == 6);
    CHECK(root.find("table")->table()->find("x")->line == 7);
    CHECK(std::holds_alternative<DateOrTime>(root.find("day")->data));
    CHECK(root.find("none") == nullptr);
    CHECK_FALSE(root.find("text")->number());
}

TEST_CASE("keys stay in the order of the file") {
    std::string order;
    const Document document = parsed("zeta = 1\nalpha = 2\n[mid]\nb = 1\na = 2\n");
    for (const Entry& entry : document.root().entries)
        (order += entry.key) += " ";
    for (const Entry& entry : document.root().find("mid")->table()->entries)
        (order += entry.key) += " ";
    CHECK(order == "zeta alpha mid b a ");
}

TEST_CASE("a repeated table begins at its header") {
    const Document document = parsed("\n[[run]]\nid = \"A\"\n\n[[run]]\n\nid = \"B\"\n");
    const Array& runs = *document.root().find("run")->array();
    REQUIRE(runs.size() == 2);
    CHECK(runs[0].line == 2);
    CHECK(runs[1].line == 5);
    CHECK(runs[1].table()->entries[0].line == 7);
}

TEST_CASE("line ends of either kind, a byte order mark and other alphabets keep the lines right") {
    const Document document =
        parsed("\xEF\xBB\xBF# \u6c34 \u2028 \u0085\r\nname = \"\u00e9tang \u2028\"\r\nx = 1");
    CHECK(document.root().entries[0].line == 2);
    CHECK(document.root().entries[1].line == 3);
}

TEST_CASE("a syntax error stands alone and names its line") {
    const std::string text = error_of("a = 1\nb = \nc = [\n");
    CHECK(text.starts_with("site.toml:2: error: not TOML: "));
    CHECK(text.ends_with("; expected a value after `=`\n    b = \n"));
    CHECK(error_of("a = 1\na = 2\n").starts_with("site.toml:2: error: not TOML: "));
    CHECK(error_of("a = \"\xff\"\n").starts_with("site.toml:1: error: not TOML: "));
}

TEST_CASE("malformed values that the library does not expect are syntax errors like others") {
    for (const char* value : {"]", "}", ",", "[,]", "[}]", "{ b = ] }", "{ b = }", "{ = 1 }", "\u00e9", "#",
                              "{", "\"", "\\", "\u00a0", "1 \u00e9"}) {
        INFO(value);
        CHECK(error_of("# first\nok = \"\\t\"\na = " + std::string(value) + "\n")
                  .starts_with("site.toml:3: error: not TOML: "));
    }
    CHECK(error_of("\u00e9 = 1\n") ==
          "site.toml:1: error: not TOML: a letter that is not ASCII outside of "
          "quotes; expected straight quotes, \" or ', round a text\n    \u00e9 = 1\n");
}

TEST_CASE("the common slips are told in words of the file, not of the library") {
    struct Row {
        const char* line;
        const char* found;
        const char* expected;
    };
    const char* const value = "text in quotes, a bare number, `true` or `false`";
    const char* const quote = "a quote at both ends of the text, on one line";
    const char* const rest = "the end of the line after a value, text in quotes, a comment after `#`";
    for (const Row& row :
         {Row{"a = \"x", "a text whose closing quote is missing", quote},
          Row{"a = 'x", "a text whose closing quote is missing", quote},
          Row{"a = \"x\x01\"", "a control character in a text", "printable letters"},
          Row{"a = \"x\\q\"", "`\\q` in a text", "`\\\\` for a backslash, `\\\"` for a quote"},
          Row{"a = x", "a value that is no number, not `true` or `false`, and no text in quotes", value},
          Row{"a = True", "a value that is no number, not `true` or `false`, and no text in quotes", value},
          Row{"a = 12' 6\"", "a value that is no number, not `true` or `false`, and no text in quotes",
              value},
          Row{"a = ", "a key without a value", "a value after `=`"},
          Row{"a b = 1", "a key that no `=` follows", "`key = value`, the key one word or in quotes"},
          Row{"a: 1", "a key that no `=` follows", "`key = value`, the key one word or in quotes"},
          Row{"a = 5 h", "`h` after the value", rest}, Row{"a = 5,5", "`,` after the value", rest},
          Row{"a = \"12\"\"", "`\"` after the value", rest},
          Row{"a = [1 2]", "a list that is not closed, or an item without a comma before it, here or above",
              "`[item, item]`"},
          Row{"ok = 2", "`ok` a second time", "each key of a table once"},
          Row{"[t]\n[t]", "`[t]` a second time", "each `[table]` once"},
          Row{"[[t]", "a heading whose bracket is not closed", "`[table]` or `[[table]]` on one line"},
          Row{"// remark", "a line that is none of TOML's",
              "`key = value`, `[table]`, `[[table]]` or `# comment`"}}) {
        INFO(row.line);
        const std::string text = error_of("ok = 1\n" + std::string(row.line) + "\n");
        CHECK(text.find(std::string("error: not TOML: ") + row.found + "; expected " + row.expected + "\n") !=
              std::string::npos);
    }
}

TEST_CASE("a forgotten quote is told on its own line, not where it shows") {
    CHECK(error_of("a = \"x\nb = 1\nc = \"\u00e9\"\u00e9\n").starts_with("site.toml:1: error: not TOML: "));
}

TEST_CASE("a file beyond any real garden is refused before it is built") {
    DocumentLimits limits;
    limits.bytes = 10;
    CHECK(error_of("a = 1 # long enough", limits) ==
          "site.toml:1: error: a file of 19 bytes; expected at most 10 bytes\n");
    limits = {};
    limits.values = 5;
    CHECK(error_of("a = 1\nb = [1, 2, 3, 4]\n", limits) ==
          "site.toml:2: error: more values than any site has; expected at most 5\n    b = [1, 2, 3, 4]\n");
    CHECK(error_of("x = " + std::string(100000, '['))
              .starts_with("site.toml:1: error: lists and tables nested too deeply; expected at most 64\n"));
    std::string dotted = "a";
    for (int i = 0; i < 100000; ++i)
        dotted += " . a";
    CHECK(error_of("# fine\n[" + dotted + "]\n")
              .starts_with("site.toml:2: error: a dotted key of too many parts; expected at most 32\n"));
}

TEST_CASE("brackets and dots within strings and comments do not count as nesting") {
    const std::string many(1000, '[');
    const std::string dots(1000, '.');
    const Document document =
        parsed("a = \"" + many + dots + "\\\"" + many + "\" # " + many + "\nb = '" + many + "'\nc = '''\n'" +
               dots + "\n''''\nd = \"\"\"" + many + "\\\"\"\"\"\"\n");
    CHECK(document.root().entries.size() == 4);
}

TEST_CASE("two values say the same wherever they stand") {
    const auto same = [](const char* text, const char* other) {
        const Document a = parsed(text);
        const Document b = parsed(other);
        return same_content(Value{a.root(), 0}, Value{b.root(), 0});
    };
    CHECK(same("a = 1\nb = [1, \"x\"]\n", "\n\nb = [1,\n\"x\"]\na = 1\n"));
    CHECK_FALSE(same("a = 1\n", "a = 1.0\n"));
    CHECK_FALSE(same("a = 1\n", "a = 1\nb = 2\n"));
    CHECK_FALSE(same("a = [1]\n", "a = [1, 1]\n"));
    CHECK(same("a = nan\n", "a = nan\n"));
}
