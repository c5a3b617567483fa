#include "rillwatt/cli/command_line.hpp"

#include <catch2/catch.hpp>

#include "support/temporary_folder.hpp"
#include <sstream>

namespace rillwatt {

namespace {

struct Outcome {
    ExitStatus status = ExitStatus::fault;
    std::string out;
    std::string err;
};

Outcome type(const std::vector<std::string>& words, const std::string& keyboard = {}) {
    std::istringstream in(keyboard);
    std::ostringstream out;
    std::ostringstream err;
    Console console{.in = in, .out = out, .err = err, .interactive = !keyboard.empty()};
    const ExitStatus status = run_command_line(words, console);
    return {status, out.str(), err.str()};
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

const std::vector<std::string> full_garden = {"--name",          "Behind the shed",
                                              "--pond-at",       "12,14",
                                              "--pond-size",     "10x8",
                                              "--path",          "4,2 4,26 30,28",
                                              "--falls-width",   "3",
                                              "--water-lights",  "3",
                                              "--path-lights",   "5",
                                              "--accent-lights", "2",
                                              "--pumps",         "1"};

std::vector<std::string> new_line(const std::string& file, const std::vector<std::string>& options) {
    std::vector<std::string> words = {"new", file};
    words.insert(words.end(), options.begin(), options.end());
    return words;
}

} // namespace

TEST_CASE("a new garden can be read and says what is open, and sizing completes it") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("garden.toml");
    const Outcome made = type(new_line(file, full_garden));
    INFO(made.err);
    REQUIRE(made.status == ExitStatus::ok);
    const Outcome open = type({"check", file});
    INFO(open.err << open.out);
    CHECK(open.status == ExitStatus::findings);
    CHECK(holds(open.out, "open-value"));
    CHECK(holds(open.out, "values are left open: `rillwatt"));
    const Outcome sized = type({"size", file, "--write"});
    INFO(sized.err << sized.out);
    CHECK(sized.status == ExitStatus::ok);
    const Outcome closed = type({"check", file});
    INFO(closed.err << closed.out);
    CHECK(closed.status == ExitStatus::ok);
}

TEST_CASE("the pumps of a new garden plug in within their cords and away from the water") {
    struct Row {
        const char* pond;
        const char* outlet;
        const char* pumps;
        const char* model;
    };
    for (const Row& row : {Row{"10,20", "2", "1", "pump-180w"}, Row{"10,60", "2", "3", "pump-65w"},
                           Row{"-40,8", "38", "2", "pump-180w"}, Row{"8,12", "2", "1", "pump-180w"},
                           Row{"60,30", "0", "1", "pump-180w-230"}}) {
        INFO(row.pond << " " << row.model);
        const test::TemporaryFolder folder;
        const std::string file = folder.file("garden.toml");
        const Outcome made = type({"new", file, "--pond-at", row.pond, "--outlet", row.outlet, "--pumps",
                                   row.pumps, "--pump-model", row.model});
        INFO(made.err);
        REQUIRE(made.status == ExitStatus::ok);
        const Outcome checked = type({"check", file});
        INFO(checked.out);
        CHECK(checked.status == ExitStatus::ok);
        for (const char* rule :
             {"[cord-too-short]", "[receptacle-near-water]", "[pump-voltage-mismatch]", "warning:"})
            CHECK_FALSE(holds(checked.out, rule));
    }
}

TEST_CASE("what is usual in metres is not what is usual in feet, and no path light stands in the house") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("garden.toml");
    REQUIRE(
        type({"new", file, "--units", "m", "--pond-at", "4,6", "--path", "0,0.6 8,0.6", "--path-lights", "4"})
            .status == ExitStatus::ok);
    const std::string text = test::file_text(file);
    CHECK(holds(text, "outline = [[0, -8], [12, -8], [12, 0], [0, 0]]"));
    CHECK(holds(text, "outline = [[4, 6], [7, 6], [7, 8.5], [4, 8.5]]"));
    CHECK(holds(text, "width = 1.2"));
    const Outcome checked = type({"check", file});
    INFO(checked.out);
    CHECK_FALSE(holds(checked.out, "warning:"));
}

TEST_CASE("a pump that no catalog has is refused with the nearest one, and asked again at a terminal") {
    const test::TemporaryFolder folder;
    const Outcome refused =
        type({"new", folder.file("garden.toml"), "--pumps", "1", "--pump-model", "pump-18w"});
    CHECK(refused.status == ExitStatus::wrong_input);
    CHECK(holds(refused.err, "nearest is `pump-180w`"));
    CHECK(folder.entries() == 0);
}

TEST_CASE("what a new garden assumes of the line voltage is marked for the electrician to confirm") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("garden.toml");
    const Outcome made = type(new_line(file, full_garden));
    CHECK(holds(made.err, "for the electrician to confirm"));
    const std::string text = test::file_text(file);
    for (const char* key : {"breaker = 20 ", "gfci = true ", "wet_cover = true "}) {
        const auto at = text.find(key);
        REQUIRE(at != std::string::npos);
        CHECK(holds(text.substr(at, text.find('\n', at) - at), "# assumed: the electrician confirms"));
    }
}

TEST_CASE("a new garden with nothing in it passes") {
    const test::TemporaryFolder folder;
    REQUIRE(type({"new", folder.file("empty.toml")}).status == ExitStatus::ok);
    CHECK(type({"check", folder.file("empty.toml")}).status == ExitStatus::ok);
}

TEST_CASE("a metric garden reads its bare numbers as metres") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("garden.toml");
    REQUIRE(type({"new", file, "--units", "m", "--house-width", "12 ft", "--house-depth", "6"}).status ==
            ExitStatus::ok);
    CHECK(holds(test::file_text(file), "[3.66, -6]"));
}

TEST_CASE("a file that exists is never written over") {
    const test::TemporaryFolder folder;
    test::put_file(folder.file("garden.toml"), "mine");
    const Outcome refused = type({"new", folder.file("garden.toml")});
    CHECK(refused.status == ExitStatus::wrong_input);
    CHECK(holds(refused.err, "exists already"));
    CHECK(test::file_text(folder.file("garden.toml")) == "mine");
}

TEST_CASE("wrong answers on the command line are all named at once and nothing is written") {
    const test::TemporaryFolder folder;
    const Outcome refused =
        type({"new", folder.file("garden.toml"), "--units", "yd", "--pumps", "-1", "--pond-at", "12"});
    CHECK(refused.status == ExitStatus::wrong_input);
    for (const char* option : {"--units", "--pumps", "--pond-at"})
        CHECK(holds(refused.err, option));
    CHECK(folder.entries() == 0);
}

TEST_CASE("options of a new garden may stand before its file") {
    const test::TemporaryFolder folder;
    const Outcome made = type(
        {"new", "--pond-at", "12, 20", "--name", "A", "--water-lights", "2", folder.file("garden.toml")});
    INFO(made.err);
    CHECK(made.status == ExitStatus::ok);
    CHECK(folder.entries() == 1);
}

TEST_CASE("answers that make no garden are refused before anything is written") {
    const test::TemporaryFolder folder;
    const std::vector<std::vector<std::string>> wrong = {{"--pond-at", "nan,0"},
                                                         {"--pond-at", "50000,0"},
                                                         {"--path", "inf,0 1,1"},
                                                         {"--path", "0,4 0,4"},
                                                         {"--pond-at", "9,9", "--pond-size", "infx8"},
                                                         {"--water-lights", "3"}};
    for (const std::vector<std::string>& options : wrong) {
        const Outcome refused = type(new_line(folder.file("garden.toml"), options));
        INFO(options.front() << ' ' << options.back() << refused.out);
        CHECK(refused.status == ExitStatus::wrong_input);
        CHECK_FALSE(refused.err.empty());
    }
    CHECK(folder.entries() == 0);
}

TEST_CASE("at a terminal it asks, asks again after a wrong answer, and takes what is in brackets for none") {
    const test::TemporaryFolder folder;
    const Outcome asked = type({"new", folder.file("garden.toml")}, "Corner plot\nyards\nm\n\n\n");
    CHECK(asked.status == ExitStatus::ok);
    CHECK(holds(asked.err, "What is the garden called"));
    CHECK(holds(asked.err, "ft or m is expected"));
    CHECK(holds(test::file_text(folder.file("garden.toml")), "name = \"Corner plot\"\nunits = \"m\""));
}

TEST_CASE("a name with quotes, brackets and backslashes stays a name; control characters are refused") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("garden.toml");
    REQUIRE(type({"new", file, "--name", "a\"] [evil] x = 1\\"}).status == ExitStatus::ok);
    CHECK(type({"check", file}).status == ExitStatus::ok);
    CHECK(type({"new", folder.file("other.toml"), "--name", "two\nlines"}).status == ExitStatus::wrong_input);
    CHECK(folder.entries() == 1);
}

TEST_CASE("the example is written with its catalog, passes, and is not written twice") {
    const test::TemporaryFolder folder;
    REQUIRE(type({"new", folder.file("garden"), "--example"}).status == ExitStatus::ok);
    CHECK(type({"check", folder.file("garden/site.toml")}).status == ExitStatus::ok);
    CHECK(type({"new", folder.file("garden"), "--example"}).status == ExitStatus::wrong_input);
}

} // namespace rillwatt
