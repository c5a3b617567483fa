// The commands light and place as a user types them, on files.
#include "rillwatt/cli/command_line.hpp"
#include "rillwatt/cli/console.hpp"

#include <catch2/catch.hpp>

#include "support/temporary_folder.hpp"
#include <sstream>

namespace rillwatt {

namespace {

struct Typed {
    ExitStatus status = ExitStatus::fault;
    std::string out;
    std::string err;
};

Typed type(const std::vector<std::string>& words) {
    std::istringstream in;
    std::ostringstream out;
    std::ostringstream err;
    Console console{.in = in, .out = out, .err = err};
    const ExitStatus status = run_command_line(words, console);
    return {status, out.str(), err.str()};
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

// Odd spacing, a comment and no last line end: nothing of it may change.
const char* const dark_garden =
    "rillwatt=1\r\n\r\n[site]\r\nname   = \"dark\"   # for now\r\nunits = \"m\"\r\n"
    "[[walk]]\r\nid=\"w\"\r\nline = [ [0,0],\r\n  [6, 0] ]\r\nwidth=1.2\r\ntarget=\"P4\"";

} // namespace

TEST_CASE("light gives a dark walk its verdict, and points in the site's unit or with their own") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("garden.toml");
    test::put_file(file, std::string(dark_garden) +
                             "\r\n[[fixture]]\r\nid=\"L\"\r\nmodel=\"path-2w-wide\"\r\nat=[3, 0.9]\r\n");
    const Typed text = type({"light", file});
    CHECK(text.status == ExitStatus::ok); // light rules warn, they do not forbid
    CHECK(holds(text.out, "too dark"));
    CHECK(holds(text.out, "[walk-too-dark]"));
    CHECK_FALSE(holds(text.out, "[open-value]")); // a light without a feed is no matter here
    const Typed json =
        type({"light", file, "--format", "json", "--point", "3,0.9,0", "--point", "300 cm, 3 ft"});
    CHECK(json.status == ExitStatus::ok);
    CHECK(holds(json.out, "\"horizontal_lux\""));
    CHECK(holds(json.out, "\"x_m\": 3, \"y_m\": 0.9, \"z_m\": 0"));
    CHECK(holds(json.out, "\"x_m\": 3, \"y_m\": 0.9144"));
    for (const char* wrong : {"3", "3,4,5,6", "3,north", "nan,0,0", ""}) {
        const Typed refused = type({"light", file, "--point", wrong});
        CHECK(refused.status == ExitStatus::wrong_input);
        CHECK(holds(refused.err, "--point"));
    }
}

TEST_CASE("falls far too large for fine cells are computed in coarse ones, and text and JSON say so") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("cliff.toml");
    test::put_file(file, "rillwatt = 1\n[site]\nname = \"cliff\"\nunits = \"ft\"\n[[falls]]\nid = \"cliff\"\n"
                         "lip = [[0, 0], [4000, 0]]\ndrop = 4000\npool_depth = 1\n"
                         "[[falls]]\nid = \"spill\"\nlip = [[0, 0], [4, 0]]\ndrop = 2\npool_depth = 1\n");
    const Typed text = type({"light", file});
    CHECK(text.status == ExitStatus::ok);
    CHECK(holds(text.out, "computed in cells of 21.0 ft only"));
    const Typed json = type({"light", file, "--format", "json"});
    CHECK(holds(json.out, "\"cell_m\": 6.4 }"));
    CHECK(holds(json.out, "\"cell_m\": 0.1 }"));
}

TEST_CASE("place adds lights to the file and leaves the rest of it to the byte") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("garden.toml");
    test::put_file(file, dark_garden);
    CHECK(type({"place", file}).status == ExitStatus::ok);
    CHECK(test::file_text(file) == dark_garden); // not asked to write
    const Typed written = type({"place", file, "--write"});
    CHECK(written.status == ExitStatus::ok);
    const std::string after = test::file_text(file);
    CHECK(after.substr(0, std::string(dark_garden).size()) == dark_garden);
    CHECK(holds(after, "[[fixture]]"));
    CHECK(holds(type({"light", file}).out, "enough"));
    CHECK(holds(type({"place", file}).out, "Every walk and falls has the light it asks for"));
    CHECK(folder.entries() == 1);
}

TEST_CASE("place says beside the number of lights how many it takes at least") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("garden.toml");
    test::put_file(file, dark_garden);
    const std::string text = type({"place", file}).out;
    CHECK((holds(text, "at least") || holds(text, "no fewer can do")));
    const std::string json = type({"place", file, "--format", "json"}).out;
    CHECK(holds(json, "\"walks\": ["));
    CHECK(holds(json, "\"lower_bound\": "));
}

TEST_CASE("place says with status 1 what cannot be lit, and with 2 what it cannot read") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("garden.toml");
    test::put_file(file, dark_garden);
    const Typed unmet = type({"place", file, "--kind", "submersible", "--write"});
    CHECK(unmet.status == ExitStatus::findings);
    CHECK(holds(unmet.out, "not met"));
    CHECK(test::file_text(file) == dark_garden);
    CHECK(type({"place", file, "--model", "no such light"}).status == ExitStatus::wrong_input);
    CHECK(type({"place", folder.file("nowhere.toml")}).status == ExitStatus::wrong_input);
}

TEST_CASE("what an uplight is meant for ends the note of wasted light once the plan has it") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("garden.toml");
    const std::string light = "rillwatt = 1\n[site]\nname = \"stone\"\n[[fixture]]\nid = \"boulder\"\n"
                              "model = \"accent-3w-24\"\nat = [10, 10]\n";
    test::put_file(file, light);
    const Typed before = type({"light", file});
    CHECK(holds(before.out, "[uplight-wasted]"));
    CHECK(holds(before.out, "an `[[area]]` of kind"));
    test::put_file(file,
                   light + "aim = [12, 10, 3]\n[[area]]\nid = \"stone\"\nkind = \"bed\"\nheight = \"5 ft\"\n"
                           "outline = [[11, 8], [14, 8], [14, 12], [11, 12]]\n");
    const Typed after = type({"light", file});
    CHECK(after.status == ExitStatus::ok);
    CHECK_FALSE(holds(after.out, "[uplight-wasted]"));
}

} // namespace rillwatt
