#include "rillwatt/document/content_changes.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

std::string changes(std::string_view as_read, std::string_view by_now,
                    std::span<const std::string_view> aside = {}) {
    std::string words;
    for (const InputError& change : content_changes(as_read, by_now, FileName("site.toml"), aside))
        words += std::to_string(change.location.line) + ": " + change.found + "\n";
    return words;
}

constexpr std::string_view base = "[site]\nname = \"x\"\n"
                                  "[[run]]\nid = \"A\"\ntap = 12\n"
                                  "[[link]]\nlength = 3\n"
                                  "[[walk]]\nid = \"W\"\n";

std::string with(std::string_view old, std::string_view now) {
    std::string text(base);
    return text.replace(text.find(old), old.size(), now);
}

} // namespace

TEST_CASE("comments, spacing, line ends and the order of keys are no changes") {
    CHECK(changes(base, "# a remark\n" + std::string(base)).empty());
    CHECK(changes(base, with("tap = 12", "  tap  =  12 # volts\r")).empty());
    CHECK(changes(base, with("id = \"A\"\ntap = 12", "tap = 12\nid = \"A\"")).empty());
}

TEST_CASE("each changed part is told once, with the line of the first new value") {
    CHECK(changes(base, with("tap = 12", "tap = 13")) ==
          "5: `run` \"A\" was changed after the file had been read\n");
    CHECK(changes(base, with("tap = 12\n", "")) ==
          "3: `run` \"A\" was changed after the file had been read\n");
    CHECK(changes(base, with("name = \"x\"", "name = \"y\"")) ==
          "2: `site` was changed after the file had been read\n");
    CHECK(changes(base, with("length = 3", "length = 4")) ==
          "7: `link` number 1 without an id was changed after the file had been read\n");
    CHECK(changes(base, with("id = \"A\"", "id = \"B\"")) ==
          "3: `run` \"B\" was added after the file had been read\n"
          "0: `run` \"A\" was taken out after the file had been read\n");
}

TEST_CASE("tables that were added, taken out or put in another order are told") {
    CHECK(changes(base, std::string(base) + "[stock]\n") ==
          "10: `stock` was added after the file had been read\n");
    CHECK(changes(std::string(base) + "[stock]\n", base) ==
          "0: `stock` was taken out after the file had been read\n");
    const std::string two = std::string(base) + "[[walk]]\nid = \"V\"\n";
    const std::string turned = with("id = \"W\"", "id = \"V\"\n[[walk]]\nid = \"W\"");
    CHECK(changes(two, turned) == "8: `walk` was put in another order after the file had been read\n");
}

TEST_CASE("tables set aside do not count, and a broken text always does") {
    constexpr std::string_view aside[] = {"walk"};
    CHECK(changes(base, with("id = \"W\"", "id = \"V\""), aside).empty());
    CHECK_FALSE(changes(base, with("tap = 12", "tap = 13"), aside).empty());
    CHECK(changes(base, std::string(base) + "[[walk", aside).starts_with("10: not TOML"));
}
