// The short way of reading TOML must say the same as the library, to the line, wherever it answers at all.

#include <catch2/catch.hpp>

#include "../../src/document/document_memory.hpp"
#include "../../src/document/plain_toml.hpp"
#include "../../src/document/toml_library.hpp"
#include <algorithm>
#include <random>

using namespace rillwatt;

namespace {

/// Same content, same order of keys, same lines.
bool same(const Value& a, const Value& b);

bool same_entries(const Table& a, const Table& b) {
    return std::equal(a.entries.begin(), a.entries.end(), b.entries.begin(), b.entries.end(),
                      [](const Entry& x, const Entry& y) {
                          return x.key == y.key && x.line == y.line && same(x.value, y.value);
                      });
}

bool same(const Value& a, const Value& b) {
    if (a.line != b.line || a.data.index() != b.data.index()) return false;
    if (a.table() != nullptr) return same_entries(*a.table(), *b.table());
    if (a.array() != nullptr)
        return std::equal(a.array()->begin(), a.array()->end(), b.array()->begin(), b.array()->end(), same);
    return same_content(a, b);
}

/// Whether the short way answered; fails when it says other than the library.
bool answered_rightly(const std::string& text) {
    DocumentMemory memory;
    const LoadResult<Table> full = read_toml_by_library(text, "", memory);
    if (!full) {
        INFO(text);
        const bool answered = read_plain_toml(memory.keep(text), memory).has_value();
        CHECK_FALSE(answered);
        return false;
    }
    const std::optional<Table> plain = read_plain_toml(memory.keep(text), memory);
    if (!plain) return false;
    INFO(text);
    CHECK(same_entries(*plain, *full.value));
    return true;
}

constexpr const char* plain_site = "# caf\u00e9 \u6c34\n"
                                   "rillwatt = 1\r\n"
                                   "\n"
                                   "[site]\n"
                                   "  name = \"Fern\u00e9\"  # x\n"
                                   "list = [ 1, 2.5, -3,\n"
                                   "  [ 'a', true ], # ]\n"
                                   "  false\n"
                                   "]\n"
                                   "[[run]]\n"
                                   "id=\"A\"\n"
                                   "at = { from = [\"a\", \"b\"], x = -0.25 }\n"
                                   "[cable.\"12/2\"]\n"
                                   "size = \"12 AWG\"\n"
                                   "[cable.x]\n"
                                   "[[run]]\n"
                                   "\"odd key\" = 1\n"
                                   "[[fixture]]";

} // namespace

TEST_CASE("a plain file is read the short way") {
    CHECK(answered_rightly(plain_site));
    CHECK(answered_rightly(""));
    CHECK(answered_rightly("a = []\nb = {}\nc = ''"));
    CHECK(answered_rightly(
        "\xEF\xBB\xBFlength = \"12' 6\\\"\"\nheight = '6\"'\npath = 'C:\\x'\nb = \"\\\\\"\n"));
    CHECK(answered_rightly("[a.b.c]\nx = 1\n[a.b.d]\nx = 1\n[b]\n[b.'c d']\n[b.e.f]\n"));
}

TEST_CASE("what is not plain, or is wrong, is left to the library") {
    for (const char* text : {"a = 1\na = 2",
                             "[a]\n[a]",
                             "[[a]]\n[a]",
                             "a = [1]\n[[a]]",
                             "[a]\nb = 1\n[a.b]",
                             "[a.b]\n[a]",
                             "a.b = 1",
                             "a = 1 b = 2",
                             "a = \"x\\ty\"",
                             "a = \"\"\"x\"\"\"",
                             "a = '''x'''",
                             "a = 1_000",
                             "a = 0x10",
                             "a = 1e3",
                             "a = inf",
                             "a = nan",
                             "a = +1",
                             "a = 01",
                             "a = 1.",
                             "a = .5",
                             "a = 2026-05-01",
                             "a = 12:30:00",
                             "a = truex",
                             "a = tru",
                             "a = [1 2]",
                             "a = {b = 1,}",
                             "a = {b = 1\n}",
                             "a = [1",
                             "a = \"x",
                             "a = ",
                             "a",
                             "= 1",
                             "[a",
                             "[[a]",
                             "[a]]",
                             "a = 1\r",
                             "a = \x01",
                             "# \x7f",
                             "a = \"\xff\"",
                             "a = \"\xed\xa0\x80\"",
                             "\xEF\xBB\xBF\xEF\xBB\xBF",
                             "a = \"\\",
                             "a = \"\\\"",
                             "a = \"x\\u0041\"",
                             "a = 99999999999999999999",
                             "[a.b]\na = 1\n[a.b.a]",
                             "[a.b.c]\n[a.b]",
                             "[ a ]",
                             "[[a.b]]",
                             "a = {b.c = 1}",
                             "a = [,]",
                             "a = {,}",
                             "[a] b = 1",
                             "a = [1,,2]",
                             "a = \"x\"\"y\"",
                             "[[a]]\n[a.b]"}) {
        INFO(text);
        CHECK_FALSE(answered_rightly(text));
    }
}

/// A text with one to three random bytes changed, inserted or taken out.
std::string damaged(std::string text, std::mt19937& random) {
    const std::string bytes = "\"'[]{}#=.,\n\r\t -_0123456789abtrue\\\x01\xc3\xa9";
    for (auto edits = 1 + random() % 3; edits > 0; --edits) {
        const std::size_t at = random() % text.size();
        const char byte = bytes[random() % bytes.size()];
        switch (random() % 3) {
        case 0:
            text[at] = byte;
            break;
        case 1:
            text.insert(at, 1, byte);
            break;
        default:
            text.erase(at, 1 + random() % 8);
        }
    }
    return text;
}

TEST_CASE("plain files with random damage are never read otherwise than the library does") {
    std::mt19937 random(20261125);
    int answered = 0;
    for (int round = 0; round < 3000; ++round)
        answered += answered_rightly(damaged(plain_site, random));
    CHECK(answered > 300); // most damage lies in names and comments
}

TEST_CASE("files with every feature of TOML survive random damage as values or as one error with its line") {
    const std::string rich =
        "\xEF\xBB\xBF# \u6c34\n"
        "a.\"b\\t\".'c' = \"\\u00e9 \\\\ \\\"\"\n"
        "d = [ 0x1F, 0o17, 0b11, 1_000, +1.5e-3, inf, -nan, 2026-05-01T07:32:00Z, 07:32:00 ]\n"
        "e = \"\"\"\n  one \\\n  two \"\" three\"\"\"\"\n"
        "f = '''\n'x' \\ '''\n"
        "g = { h.i = 1, j = { k = [ {}, [ ] ] } }\n"
        "[ l . m ]\r\n"
        "[[n.o]]\n"
        "p = true\n";
    REQUIRE(parse_document(rich, "site.toml"));
    std::mt19937 random(7);
    int errors = 0;
    for (int round = 0; round < 3000; ++round) {
        const std::string text = damaged(rich, random);
        INFO(text);
        const LoadResult<Document> result = parse_document(text, "site.toml");
        if (result) continue;
        ++errors;
        REQUIRE(result.errors.size() == 1);
        CHECK(result.errors[0].location.line >= 1);
        CHECK(result.errors[0].location.line <= 1 + std::count(text.begin(), text.end(), '\n'));
    }
    CHECK(errors > 1000);
}
